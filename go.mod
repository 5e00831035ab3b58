module aerosteep

go 1.26
