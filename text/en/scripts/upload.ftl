# All photos that are chosen.
chosen-already = { $file } is chosen already; it is sent once.
photos = { $count ->
    [one] 1 photo
   *[other] { $count } photos
  }
sent-so-far = { $of ->
    [one] Sending the photo …
   *[other] { $sent } of { $of } sent
  }
outcome = { $taken } taken in, { $refused } refused, { $stopped } stopped.
some-not-taken = { $refused } of { $all } photos were not taken. Why, and what to do, stands at each of them above. The others are kept.
choose-a-photo = Choose a photo to add.
corners-of-one = Corners are those of one photo. Send that photo by itself, and the others without corners.
