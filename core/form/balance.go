package form

// balanceFields are the weights at the pin, the readings on the knife-edges,
// the factor to aim at, how the engine stands and turns, and what may be
// drilled. "weight" is what was on while it was weighed, "new" what is to be
// fitted, blank where it stays; rows of "cylinder" are those beyond the first, on
// the same pin, and blank where they are as the first. Rows of "keep" are places
// to keep off, holes that are there already among them; those of "hole" are to
// be drilled.
const balanceFields = `
300 balance.scale    g 0.001..1000 1
301 weight.piston    g 0..1000000
302 weight.rings     g 0..1000000
303 weight.gudgeon   g 0..1000000
304 weight.clips     g 0..1000000
305 weight.small     g 0..1000000
306 weight.big       g 0..1000000
307 weight.rod       g 0..1000000
308 weight.bearing   g 0..1000000
309 weight.crankpin  g 0..1000000
310 balance.grade    plain 0.1..4000 6.3

311 new.piston       g 0..1000000
312 new.rings        g 0..1000000
313 new.gudgeon      g 0..1000000
314 new.clips        g 0..1000000
315 new.small        g 0..1000000
316 new.big          g 0..1000000
317 new.rod          g 0..1000000
318 new.bearing      g 0..1000000
319 new.crankpin     g 0..1000000

320 cylinder.*.order          order
321 cylinder.*.bank           deg -360..360 0
322 cylinder.*.weight.piston  g 0..1000000
323 cylinder.*.weight.rings   g 0..1000000
324 cylinder.*.weight.gudgeon g 0..1000000
325 cylinder.*.weight.clips   g 0..1000000
326 cylinder.*.weight.small   g 0..1000000
327 cylinder.*.weight.big     g 0..1000000
328 cylinder.*.weight.rod     g 0..1000000
329 cylinder.*.new.piston     g 0..1000000
330 cylinder.*.new.rings      g 0..1000000
331 cylinder.*.new.gudgeon    g 0..1000000
332 cylinder.*.new.clips      g 0..1000000
333 cylinder.*.new.small      g 0..1000000
334 cylinder.*.new.big        g 0..1000000
335 cylinder.*.new.rod        g 0..1000000

336 after.way        choice swarf wheel
337 after.drive      g 0..100000
338 after.timing     g 0..100000
339 balance.whole    g 10..1000000

340 knife.what          choice whole wheels drive timing stated
341 knife.stated        % 0..150
342 knife.whole.on      choice rods bob bearing
343 knife.whole.hung    g -1000000..1000000
344 knife.whole.hour    o'clock 0..12
345 knife.whole.weight  g 0..100000
346 knife.whole.radius  mm 0..2000
347 knife.drive.on      choice bare pin bearing rods
348 knife.drive.hung    g -1000000..1000000
349 knife.drive.hour    o'clock 0..12
350 knife.drive.weight  g 0..100000
351 knife.drive.radius  mm 0..2000
352 knife.timing.on     choice bare pin bearing rods
353 knife.timing.hung   g -1000000..1000000
354 knife.timing.hour   o'clock 0..12
355 knife.timing.weight g 0..100000
356 knife.timing.radius mm 0..2000

357 target           choice keep factor
358 target.factor    % 0..150
359 rod.centres      mm 10..5000
360 frame.lean       deg -180..180 0
361 frame.turns      choice forward backward
362 frame.speeds     list 100 rpm 50..30000

363 drill.set        choice metric inch list
364 drill.from       mm 0.5..60
365 drill.to         mm 0.5..60
366 drill.step       mm 0.05..20
367 drill.list       list 400 mm 0.5..60
368 drill.point      deg 45..180 118
369 drill.bottom     choice either through blind
370 drill.depth      mm 0.1..500
371 drill.depthstep  mm 0.1..20 0.5
372 drill.holes      plain 1..16 8
373 zone.in          mm 0..1000
374 zone.out         mm 1..1000
375 zone.hour        o'clock 0..12
376 zone.half        deg 0..180 60
377 zone.thick       mm 1..500 20
378 zone.wall        mm 0..100 3
379 zone.density     kg/m3 1000..25000 7850
380 zone.boss        mm 0..500 50
381 plug.density     kg/m3 1000..25000
382 plan.wheels      choice both drive timing
383 plan.within      % 0.05..20 0.5

385 keep.*.order     order
386 keep.*.wheel     choice both drive timing
387 keep.*.radius    mm 0..1000
388 keep.*.hour      o'clock 0..12
389 keep.*.across    mm 0..500

390 hole.*.order     order
391 hole.*.wheel     choice both drive timing
392 hole.*.radius    mm 0..1000
393 hole.*.hour      o'clock 0..12
394 hole.*.drill     mm 0.5..60
395 hole.*.depth     mm 0..500
396 hole.*.bottom    choice blind through
397 hole.*.plug      tick

398 balance.rolls    g 0..100000
399 balance.rollsat  mm 1..2000
`
