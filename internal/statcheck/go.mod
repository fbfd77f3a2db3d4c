module example.com/ribface/internal/statcheck

go 1.24

replace example.com/ribface => ../..
