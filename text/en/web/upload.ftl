## upload.rs

the-upload-broke-off-or-came = The upload broke off or came in a form that can’t be read. Choose the file and send it again.
