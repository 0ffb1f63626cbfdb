## preview.rs

no-small-copy-of-the-photo-could = No small copy of the photo could be made. Copy it from the camera again.
