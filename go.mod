module strokeledger

go 1.26.8
