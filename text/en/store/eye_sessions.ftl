## eye_sessions.rs

judges-in-this-session-already-go = { $name } judges in this session already. Go on there, or write another name or initials.
write-the-remark-in-letters-at-most = Write the remark in { $longest } letters at most.
this-session-is-closed-its-grades = This session is closed: its grades and codes were laid open, so nobody can judge blind in it. Begin another one.
session-of-stage-pairs = session { $id } of { $slug }, stage { $stage }, { $pairs ->
    [one] 1 pair
   *[other] { $pairs } pairs
  }
in-session = { $name } in session { $session }
session = session { $session }
