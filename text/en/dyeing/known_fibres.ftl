### The fibres of crates/dyeing/data/fibres.toml, looked up by their key: its name, and what happens to it in a bath
### that is too hot, as the end of a sentence.

cotton = cotton
cotton-above = cotton stands the boil, but not more

linen = linen
linen-above = linen stands the boil, but not more

hemp = hemp
hemp-above = hemp stands the boil, but not more

viscose = viscose
viscose-above = viscose is weak when wet and hot

wool = wool
wool-above = wool is harmed by hard boiling, and felts where it is moved or shocked

silk = silk
silk-above = silk loses its lustre and its strength; it is usually kept at 80 to 85 °C

nylon = nylon
nylon-above = nylon creases for good and yellows

polyester = polyester
polyester-above = polyester loses its form

acetate = acetate
acetate-above = acetate loses its lustre

acrylic = acrylic
acrylic-above = acrylic goes limp, and creases if cooled quickly
