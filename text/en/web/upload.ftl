## upload.rs

the-upload-broke-off-or-came = The upload broke off or came in a form that can’t be read. Choose the file and send it again.
more-than-320-mb-came-at-once = More than 320 MB came at once. Send fewer photos at a time, each a JPEG of at most 80 MB.
too-large-for-a-photo = This file is larger than 80 MB. Send the photo as the phone saved it, a JPEG, not a film or a raw file.
too-large-for-a-table = This file is larger than 1 MB. Export only the readings of this trial, as CSV or CGATS text.
too-large-for-a-chart = This file is larger than 1 MB. Send only the values of the chart’s patches, as CSV or CGATS text.
