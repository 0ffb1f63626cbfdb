## guard.rs

this-is-done-at-the-computer = This is done at the computer that Woadstone runs on, not on a phone.
woadstone-answers-only-under-the-address = Woadstone answers only under the address it printed when it started. Open that address.
this-change-was-sent-from-another-web = This change was sent from another web site, so nothing was changed. Make it on Woadstone's own page.
