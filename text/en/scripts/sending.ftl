# One photo on its way.
to-be-sent = to be sent
leave-out = Leave out
left-out = left out
file-is-larger = This file is larger than { $megabytes } MB. Send the photo as the phone saved it, a JPEG.
is-sent = is sent …
percent-sent = { $percent } % sent
chart-is-looked-for = sent; the chart is looked for …
stop = Stop
not-reached = Woadstone could not be reached. See whether it is still running, then send the photo again.
stopped = stopped; nothing of it was kept
send-again = Send again
was-here-already = was here already; kept once
taken-in = ✓ taken in
no-reason = The photo was not taken, and no reason came back. Send it again.
refused = ▲ { $message }
button-for = { $button }: { $file }
