package main
import ("testing";"fmt")
func TestZZ(t *testing.T){ e,err:=build(); if err!=nil{t.Fatal(err)}; fmt.Println("ENGINE",len(e.Module)) }
