## clock.rs

am = am
pm = pm
