## lib.rs

the-solutions-alone-are-more = the solutions alone are { $liquids }, more than the bath of { $bath }; use stronger stock or more water
