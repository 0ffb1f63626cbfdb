## upload.rs

the-upload-broke-off-or-came = The upload broke off or came in a form that can’t be read. Choose the file and send it again.
more-than-320-mb-came-at-once = More than 320 MB came at once. Send fewer photos at a time, each a JPEG of at most 80 MB.
