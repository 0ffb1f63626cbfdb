## form.rs

the-form-cant-be-read = The form can’t be read: { $error }.
