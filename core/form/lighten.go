package form

// lightenFields are the wheels as they stand, the cuts to make, and what the
// lightening is judged by. What is turned is given by diameters, as a caliper
// reads it. Rows of "made" are cuts that the wheel came with, those of "cut"
// are to be made, those of "swing" are swing tests. The one figure of a cut that
// is left blank is found for the weight that is to come off.
const lightenFields = `
200 lighten.material  choice steel iron ductile
201 lighten.density   kg/m3 1000..20000 7850
202 lighten.strength  mpa 10..3000 550
203 lighten.off       g 1..100000
204 lighten.web       mm 0..500 10
205 lighten.rimdepth  mm 0..500 15
206 lighten.rimwidth  mm 0..500 15
207 lighten.holewall  mm 0..500 5
208 lighten.idle      rpm 50..10000
209 lighten.gears     list 100 plain 0.5..200
210 lighten.tyre      mm 50..2000
211 lighten.top       rpm 100..50000
212 lighten.scale     g 0.001..1000 1
213 lighten.rest      g 1..1000000
214 lighten.bossside  choice outer inner

220 wheel.drive.diameter  mm 40..2000 200
221 wheel.drive.width     mm 3..500 28
222 wheel.drive.bore      mm 0..1000 24
223 wheel.drive.boss      mm 0..1000 0
224 wheel.drive.pinhole   mm 0..500 0
225 wheel.drive.weight    g 50..1000000
226 wheel.drive.after     g 50..1000000

230 wheel.timing.diameter mm 40..2000 200
231 wheel.timing.width    mm 3..500 28
232 wheel.timing.bore     mm 0..1000 24
233 wheel.timing.boss     mm 0..1000 0
234 wheel.timing.pinhole  mm 0..500 0
235 wheel.timing.weight   g 50..1000000
236 wheel.timing.after    g 50..1000000

240 made.*.order   order
241 made.*.wheel   choice both drive timing
242 made.*.kind    choice recess bevel holes blind
243 made.*.side    choice outer inner
244 made.*.from    mm 0..2000
245 made.*.to      mm 0..2000
246 made.*.depth   mm 0..500
247 made.*.deep    choice rim middle
248 made.*.holes   plain 1..100
249 made.*.circle  mm 0..2000
250 made.*.first   o'clock 0..12 12
251 made.*.drill   mm 0..500
252 made.*.point   deg 45..180 118

260 cut.*.order    order
261 cut.*.wheel    choice both drive timing
262 cut.*.kind     choice recess rim face bevel holes blind
263 cut.*.side     choice outer inner
264 cut.*.from     mm 0..2000
265 cut.*.to       mm 0..2000
266 cut.*.depth    mm 0..500
267 cut.*.deep     choice rim middle
268 cut.*.holes    plain 1..100
269 cut.*.circle   mm 0..2000
270 cut.*.first    o'clock 0..12 12
271 cut.*.drill    mm 0..500
272 cut.*.point    deg 45..180 118
273 cut.*.rim      mm 10..2000

280 swing.*.order  order
281 swing.*.of     choice drive timing crank
282 swing.*.when   choice before after
283 swing.*.mass   g 50..1000000
284 swing.*.arm    mm 1..2000
285 swing.*.armpm  mm 0..50 0.5
286 swing.*.start  deg 0..60 5
287 swing.*.end    deg 0..60
288 swing.*.passes choice two one
289 swing.*.taps   list 1200 s 0..86400
`
