package size
import ("testing";"fmt";"ribwright/geometry/family")
func TestY(t *testing.T){
 for _,n:=range family.Names(){ f,err:=family.Shipped(n); if err!=nil {t.Error(err); continue}
  p:=Trying{Family:f}.Try(1000)
  fmt.Println(n,p.Tried,p.Passed)
  for _,c:=range p.Counts() { b:=c.Worst.Brief; fmt.Println("  ",c.Name,c.Times,c.Text,"|",c.Worst.Number, b.Who(),b.Crew[0].Posture,b.Skill,b.Stock) }
 }
}
