package size
import ("strings";"testing";"fmt";"ribwright/geometry/family";"ribwright/geometry/bend";"time")
func TestX(t *testing.T){
 for _,n:=range family.Names(){ f,err:=family.Shipped(n); if err!=nil {t.Error(err); continue}
  tb:=time.Duration(0)
  p:=Trying{Family:f,Judge:func(b *Boat) []Shown { t0:=time.Now(); r,err:=bend.Of(b.Frame); tb+=time.Since(t0); if err!=nil { return []Shown{{"bend",err.Error(),1}}}
    var out []Shown
    for _,f:=range r.Findings { if !f.Pass { out=append(out,Shown{"bend "+strings.Join(strings.Fields(f.Part)[:min(3,len(strings.Fields(f.Part)))]," "),fmt.Sprintf("%+v",f),f.Value/f.Limit}) } }
    return out
  }}.Try(2000)
  fmt.Println(n,p.Tried,p.Passed,tb)
  for _,c:=range p.Counts() { b:=c.Worst.Brief; fmt.Println("  ",c.Name,c.Times,c.Text,"|",c.Worst.Number, b.Who(),b.Crew[0].Posture,b.Skill,b.Stock) }
 }
}
