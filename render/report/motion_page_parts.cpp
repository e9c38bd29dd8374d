#include "render/report/motion_page_parts.h"

namespace stowpath {

std::string_view motion_page_style() {
  return R"(:root{--paper:#faf5e9;--line:#242a33;--soft:#5e5f5c;--red:#b83227;--blue:#2f5d8a}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--line);font:17px/1.45 'Routed Gothic','DejaVu Sans',sans-serif}
main{max-width:960px;margin:auto;padding:12px}
h1{font-size:1.4rem;margin:.2em 0}
h2{font-size:1.1rem;margin:1em 0 .2em}
.soft{color:var(--soft)}
svg{width:100%;height:auto;display:block}
svg.view{max-height:62vh}
#now{display:block;min-height:2.9em;font-size:1.1rem;border-bottom:1px solid #c9bea4}
.bar{display:flex;flex-wrap:wrap;gap:10px;align-items:center;position:sticky;bottom:0;background:var(--paper);padding:10px 0}
.bar input{flex:1 1 200px;height:48px;accent-color:var(--line)}
button,select{font:inherit;min-width:48px;min-height:48px;border:1px solid var(--line);background:#fbf8ef;color:var(--line);border-radius:2px}
button:focus-visible,input:focus-visible,select:focus-visible{outline:3px solid var(--blue);outline-offset:2px}
ol{list-style:none;margin:0;padding:0}
li button{width:100%;text-align:left;border:0;border-left:4px solid transparent;background:none;padding:0 8px}
li.trouble button{color:var(--red)}
li.past button{border-left-color:var(--line)}
.only-scripts{display:none}
.scripts .only-scripts{display:flex}
.scripts ol.only-scripts{display:block}
.scripts .no-scripts{display:none}
@media print{.bar{display:none}body{background:#fff}}
)";
}

std::string_view motion_page_script() {
  return R"(document.documentElement.classList.add('scripts');
const $=id=>document.getElementById(id),F=run.frames,N=run.sections,T0=F[0][0],T1=run.ends;
let time=T0,last=0,playing=false;
// The frame at a time, straight between the two next to it. A frame: time, move, pull, line on, then x, y, turn of
// each section; then the stair's place along the rail and its turn, both on the paper from above, a hand's push, and the
// fold line's pull.
// Frames in run.brought are of a stair put elsewhere meanwhile: nothing goes there, and nothing has a speed.
function at(t){
  let a=0,b=F.length-1;
  while(b-a>1){const m=(a+b)>>1;F[m][0]<=t?a=m:b=m}
  const p=F[a],q=F[b],put=run.brought.includes(b);
  const u=put?+(t>=q[0]):q[0]>p[0]?Math.max(0,Math.min(1,(t-p[0])/(q[0]-p[0]))):0,f=p.map((v,i)=>v+u*(q[i]-v));
  f[1]=u<1?p[1]:q[1];f[3]=u<1?p[3]:q[3];
  f.speed=q[0]>p[0]&&!put&&t<=q[0]?foot(q,p)/(q[0]-p[0]):0;
  return f}
function point(f,e){if(e[0]<0)return[e[1],e[2]];const k=4+3*e[0],c=Math.cos(f[k+2]),s=Math.sin(f[k+2]);
  return[f[k]+c*e[1]-s*e[2],f[k+1]+s*e[1]+c*e[2]]}
function foot(q,p){const e=[N-1,run.foot,0],a=point(p,e),b=point(q,e),k=4+3*N;
  return Math.hypot((b[0]-a[0])*run.metres,(b[1]-a[1])*run.metres,(q[k]-p[k])*run.planMetres)}
// The wider the harder it is pulled, dashed where it is slack, red beyond what the crew can pull.
function rope(e,pull,most){
  e.setAttribute('class',pull>most?'s-red':pull>0?'s-line':'s-blue');
  e.setAttribute('stroke-width',pull>0?(.25+.75*Math.min(1,pull/most)).toFixed(2):.35);
  e.setAttribute('stroke-dasharray',pull>0?'none':'2 1')}
function show(t){
  time=Math.max(T0,Math.min(T1,t));const f=at(time);
  for(let j=0;j<N;j++){const k=4+3*j;
    $('section-'+j).setAttribute('transform','translate('+f[k].toFixed(2)+' '+f[k+1].toFixed(2)+') rotate('+(f[k+2]*180/Math.PI).toFixed(3)+')')}
  const k=4+3*N;
  // From above the stair is drawn as it stands: once it leans otherwise, it is left out.
  if(run.axis)$('above').style.display=Math.abs(f[6]-F[0][6])<.02?'':'none',$('above').setAttribute('transform','translate('+f[k].toFixed(2)+' '+run.axis+') rotate('+(f[k+1]*180/Math.PI).toFixed(3)+')');
  run.ropes.forEach((r,i)=>{const a=point(f,r.a),b=point(f,r.b),e=$('rope-'+i);
    e.setAttribute('x1',a[0].toFixed(2));e.setAttribute('y1',a[1].toFixed(2));
    e.setAttribute('x2',b[0].toFixed(2));e.setAttribute('y2',b[1].toFixed(2));
    if(run.forces)rope(e,r.hooked?f[2]:f[k+3],run.strongest[r.hooked?0:1]);
    e.style.display=!r.hooked||f[3]>0?'':'none'});
  $('slide').value=time;
  const x=run.plot[0]+(time-run.plot[2])/(run.plot[3]-run.plot[2])*(run.plot[1]-run.plot[0]);
  for(const c of document.querySelectorAll('.cursor')){c.setAttribute('x1',x);c.setAttribute('x2',x)}
  let said='';
  run.events.forEach((e,i)=>{const past=e[0]<=time+1e-9;$('event-'+i).className=(e[2]?'trouble ':'')+(past?'past':'');if(past)said=e[1]});
  $('now').textContent=!run.forces?said:time.toFixed(2)+' s'+(f[1]>=0?', '+run.moves[f[1]]+(run.down!==null&&time>=run.down?' backwards':''):'')+'. Line '+(f[3]>0?Math.round(f[2]*run.force)+' '+run.forceUnit:'off')
    +(f[k+2]?', push along the rail '+Math.round(f[k+2]*run.force)+' '+run.forceUnit:'')+', foot '+(f.speed*run.speed).toFixed(2)+' '+run.speedUnit+'. '+said}
function tick(now){if(!playing)return;const fast=+$('fast').value;show(time+fast*(now-last)/1000);last=now;
  if(time>=T1)stop();else requestAnimationFrame(tick)}
function stop(){playing=false;$('play').textContent='Play'}
function play(){if(playing)return stop();if(time>=T1)time=T0;playing=true;$('play').textContent='Stop';last=performance.now();requestAnimationFrame(tick)}
function step(by){stop();let i=F.findIndex(f=>f[0]>=time-1e-9);if(i<0)i=F.length;if(by<0&&i>0||i<F.length&&F[i][0]<=time+1e-9)i+=by;
  show(F[Math.max(0,Math.min(F.length-1,i))][0])}
$('slide').min=T0;$('slide').max=T1;$('slide').step=(T1-T0)/2000||1;
$('slide').oninput=()=>{stop();show(+$('slide').value)};
$('back').onclick=()=>step(-1);$('next').onclick=()=>step(1);$('play').onclick=play;
run.events.forEach((e,i)=>{$('event-'+i).firstChild.onclick=()=>{stop();show(e[0])}});
const asked=parseFloat(location.hash.slice(1));show(isNaN(asked)?T0:asked);
)";
}

}  // namespace stowpath
