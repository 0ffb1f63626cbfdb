## lib.rs

the-solutions-alone-are-more-2 = the solutions alone are { $shown }, more than the bath of { $shown2 }; use stronger stock or more water
