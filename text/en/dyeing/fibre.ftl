## fibre.rs

fibre = fibre
write-a-blend-as-60-cotton-40 = write a blend as "60 % cotton, 40 % polyester"
the-shares-of-make = the shares of "{ $text }" make { $sum } %, and have to make 100 %
