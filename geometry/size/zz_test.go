package size
import ("testing";"fmt";"time";"ribwright/geometry/body";"ribwright/geometry/family";"math")
func TestZ(t *testing.T){
 for _,n:=range family.Names(){ f,err:=family.Shipped(n); if err!=nil {t.Error(err); continue}
  for _,p:=range body.Corners() { for _,gear:=range []float64{0,20,40} {
   b:=Usual(); b.Title="x"; b.Gear=gear
   pa:=Paddler{Person:p,Posture:"either"}
   b.Crew=[]Paddler{pa}; if f.Seats==2 { b.Crew=append(b.Crew,pa)}
   t0:=time.Now()
   c,err:=NewCase(f,b); if err!=nil {t.Fatal(err)}
   if err:=c.Settle(); err!=nil { fmt.Println(n,p,gear,err); continue}
   q:=c.found; t1:=time.Now()
   x,err:=c.Finish(); if err!=nil { fmt.Println(n,p,gear,err); continue}
   r:=c.run
   fmt.Printf("%s %s %.0fkg %.0f +%.0f: L %.0f B %.0f D %.0f T %.0f(%.1f) fb %.0f gm %.0f(%.1f) boat %.1f(%.2f) ext %.0f(%.1f) reach %.0f seat %.0f(%.1f) h %.0f trim %.1f gir %.0f(%.0f) dep/b %.2f L/b %.2f tight %.1f(%.1f) wet %.2f(%.2f) lwl %.0f(%.0f) pad %.0f %v %v |", n,p.Sex,p.Weight,p.Stature,gear, r.Number("hull.length"),r.Number("hull.beam"),r.Number("hull.depth"),x.Found["draft"],q["draft"],x.Found["freeboard"],x.Found["gm"],q["gm"],x.Found["boat_weight"],q["boat_weight"],x.Found["extreme_beam"],q["extreme_beam"],r.Number("reach"),x.Found["seat_width"],q["seat_width"],r.Number("seat_height"),x.Found["trim"]*180/math.Pi,x.Found["girth"],q["girth"],r.Number("depth_inside")/x.Found["extreme_beam"],r.Number("slenderness"),x.Found["tightest_rib"],q["tightest_rib"],x.Found["wetted"]/1e6,q["wetted"]/1e6,x.Found["waterline_length"],q["waterline_length"],r.Number("paddle"),t1.Sub(t0).Round(100000),time.Since(t1).Round(100000))
   for _,v:=range x.Failures() { fmt.Print(" ",v.Text(),";") }
   fmt.Println()
  }}
 }
}
