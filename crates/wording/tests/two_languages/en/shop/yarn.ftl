# What the shelf says.
soak-first = Soak the yarn first
half-full = The pot is { $share } % full of { $what }.
skeins-left = { $count ->
    [0] No skein of { $colour } is left
    [one] One skein of { $colour } is left
   *[other] { $count } skeins of { $colour } are left
  }.
braces = { "{" }blue{ "}" } and "red"
