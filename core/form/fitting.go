package form

// fittingFields are what is looked at and measured from the crank on the bench
// to the cases closed, and the ticks of the order of work. A list of readings
// goes from the near end over the middle to the far end, and round again for a
// repeat; "across" is at right angles to the first. Rows of "joint" are pressed
// and tapered joints, those of "main" main bearings. The end float's figures
// from the left are from the drive side.
const fittingFields = `
400 order.found   tick
401 order.split   tick
402 order.measure tick
403 order.lighten tick
404 order.balance tick
405 order.press   tick
406 order.true    tick
407 order.nuts    tick
408 order.again   tick
409 order.cases   tick

410 found.drive      fine 0..6.35
411 found.timing     fine 0..6.35
412 found.rock       fine 0..20
413 found.rockat     mm 20..1000 150
414 found.pin        mm 3..300 30
415 found.width      mm 2..200 18
416 found.side       fine 0..6.35
417 found.cheek      mm 3..300
418 found.bendbig    list 40 fine -25..25
419 found.bendsmall  list 40 fine -25..25
420 found.twistbig   list 40 fine -25..25
421 found.twistsmall list 40 fine -25..25
422 found.span       mm 10..1000 100
423 found.rodallowed fine 0.001..1 2
424 found.note       words 400
425 found.oilways    choice - good bad
426 found.sludge     choice - good bad
427 found.cracks     choice - good bad
428 found.pinseats   choice - good bad
429 found.tapers     choice - good bad
430 found.threads    choice - good bad
431 found.keyways    choice - good bad
432 found.witness    choice - good bad

440 bigend.kind     choice bush rollers
441 bigend.step     fine 0.00001..0.1 0.1
442 bigend.pin      list 200 mm 3..300
443 bigend.pin90    list 200 mm 3..300
444 bigend.bore     list 200 mm 3..300
445 bigend.bore90   list 200 mm 3..300
446 bigend.bush     list 200 mm 3..300
447 bigend.bush90   list 200 mm 3..300
448 bigend.eye      list 200 mm 3..300
449 bigend.eye90    list 200 mm 3..300
450 bigend.roller   list 200 mm 1..100
451 bigend.least    fine 0..1
452 bigend.most     fine 0..1
453 bigend.outleast fine 0..1
454 bigend.outmost  fine 0..1
455 bigend.sideleast fine 0..5 8
456 bigend.sidemost  fine 0..5 20

460 joint.*.order    order
461 joint.*.what     choice drivepin timingpin driveshaft timingshaft
462 joint.*.form     choice press taper
463 joint.*.pin      list 200 mm 3..300
464 joint.*.eye      list 200 mm 3..300
465 joint.*.length   mm 1..200 20
466 joint.*.hub      mm 4..1000
467 joint.*.hollow   mm 0..200 0
468 joint.*.friction plain 0.01..1 0.11
469 joint.*.wheel    choice steel iron
470 joint.*.yield    mpa 10..3000
471 joint.*.need     nm 0.01..100000
472 joint.*.taper    plain 2..200 8
473 joint.*.draw     fine 0..25
474 duty.power       plain 0.1..1000
475 duty.speed       rpm 100..30000
476 duty.peak        plain 1..50 8

480 press.first   choice drive timing
481 press.drive   mm 3..300
482 press.timing  mm 3..300
483 press.rod     mm 2..200
484 press.washers mm 0..50 0
485 press.over    mm 5..1000
486 press.oilway  tick
487 press.edge    tick
488 press.nuts    tick
489 press.locked  tick

500 main.*.order   order
501 main.*.side    choice drive timing
502 main.*.kind    choice balls rollers
503 main.*.case    choice alloy magnesium iron steel
504 main.*.bore    mm 3..180
505 main.*.outside mm 3..300
506 main.*.seat    list 200 mm 3..300
507 main.*.housing list 200 mm 3..300
508 main.*.seatclass    words 6
509 main.*.housingclass words 6
510 main.*.wall    mm 4..1000
511 main.*.play    fine 0..1 0.8
512 heat.room      °C -50..60 20
513 heat.clear     fine 0..1 1
514 heat.freezer   °C -200..20 -18
515 heat.running   °C 0..300 90

520 float.faces     mm 5..1000
521 float.crank     mm 5..1000
522 float.washers   mm 0..100 0
523 float.least     fine 0..5 4
524 float.most      fine 0..5 12
525 float.judge     choice hot cold
526 float.shims     list 200 mm 0.01..20
527 float.caseleft  mm 0..1000
528 float.crankleft mm 0..1000
529 float.off       fine 0..10 20
530 cases.drive     fine 0..6.35
531 cases.timing    fine 0..6.35
`
