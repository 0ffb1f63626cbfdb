# What is told while a page is watched.
being-read = Being read.
waits-to-be-read = Waits to be read.
worked-out = Worked out.
code-is-not-good = This code is not good any more. Make another one.
