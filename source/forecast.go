package source
