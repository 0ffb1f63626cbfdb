## materials.rs

the-material-has-no-name-give = The material has no name. Give it the name that your recipes call it by.
there-is-a-material-called-already-add = There is a material called "{ $name }" already. Add a lot to it, or give this one another name.
this-text-has-characters-is-the-most = This text has { $length } characters; { $most_text } is the most. Make it shorter.
of-lot = { $amount } of { $name }, lot { $id }
