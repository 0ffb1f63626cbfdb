## typed.rs

n-9-50-per-100-g = 9.50 per 100 g
n-9-50-per-4-oz = 9.50 per 4 oz
n-4-20-per-kg = 4.20 per kg
n-4-20-per-lb = 4.20 per lb
n-1-1-4-gallons = 1 1/4 gallons
