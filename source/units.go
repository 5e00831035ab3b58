package source

// NISTSP811 is where the unit factors come from; those of the inch, pound,
// gallon and acre are exact.
var NISTSP811 = cite("nist-sp-811", "Thompson and Taylor 2008, Guide for the Use of the International System of Units, NIST Special Publication 811", "appendix B, factors for units")
