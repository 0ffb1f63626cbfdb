soak-first = Week het garen eerst
skeins-left = { $count ->
    [one] Er is één streng { $colour }
   *[other] Er zijn { $count } strengen { $colour }
  }.
