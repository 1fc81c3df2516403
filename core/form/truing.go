package form

// sides are the fixed words for the two ends, as names carry them.
var sides = [...]string{"drive", "timing"}

// truingFields are the set-up of the crank and its dials, and the readings.
// Lengths of a half are measured from that shaft's own end. A dial's further
// places along a shaft are rows of "dial"; what was done after a pass is rows of
// its "done": a blow by how many and how hard, a clamp or wedge by the turns of its
// screw or by how far it closes or opens the gap while it holds, as "clamp" says.
// "since" is what came before a pass where the one before it has none: all that was
// advised, its first move only, something else, the nuts drawn up, or nothing.
// "centres" and "tailstock" are what became of trying those. "bench" is the key of
// the pass that is on the bench.
const truingFields = `
 1 left       choice drive timing
 2 seen       choice drive timing
 3 units      choice inch metric
 4 mount      choice centres vblocks bearings
 5 dials      choice two one
 6 tolerance  fine 0.001..2.54 2
 7 throw      mm 5..200 42
 8 rim        mm 20..800 190
 9 number     words 180

10 drive.division  fine 0.0001..0.254 0.5
11 drive.at        mm 1..1000 75
12 drive.pin       mm 5..1500 120
13 drive.bearing   mm 0..1000 70
14 drive.tip       mm 0..1000 10
15 drive.held      mm 0..1000 60
16 drive.sweep     fine 0.01..30 50

20 timing.division fine 0.0001..0.254 0.5
21 timing.at       mm 1..1000 75
22 timing.pin      mm 5..1500 120
23 timing.bearing  mm 0..1000 70
24 timing.tip      mm 0..1000 10
25 timing.held     mm 0..1000 60
26 timing.sweep    fine 0.01..30 50

27 tilt            arcmin 0.0001..10 4
28 feeler          fine 0.0001..0.5 1

30 pass.*.order    order
31 pass.*.gap12    mm 0..200
32 pass.*.gap3     mm 0..200
33 pass.*.gap6     mm 0..200
34 pass.*.gap9     mm 0..200
35 pass.*.edge12   fine -6.35..6.35
36 pass.*.edge3    fine -6.35..6.35
37 pass.*.edge9    fine -6.35..6.35
38 pass.*.note     words 600
39 bench           words 12

40 pass.*.drive.how    choice hour halfway pin turn
41 pass.*.drive.tir    fine 0..6.35
42 pass.*.drive.high   o'clock 0..12
43 pass.*.drive.rise   o'clock 0..12
44 pass.*.drive.fall   o'clock 0..12
45 pass.*.drive.stands choice above front behind below
46 pass.*.drive.pinat  choice - up front down back
47 pass.*.drive.points choice 4 8 12 given
48 pass.*.drive.turn   list 4000 fine -100..100
49 pass.*.drive.hours  list 4000 o'clock 0..12

50 pass.*.timing.how    choice hour halfway pin turn
51 pass.*.timing.tir    fine 0..6.35
52 pass.*.timing.high   o'clock 0..12
53 pass.*.timing.rise   o'clock 0..12
54 pass.*.timing.fall   o'clock 0..12
55 pass.*.timing.stands choice above front behind below
56 pass.*.timing.pinat  choice - up front down back
57 pass.*.timing.points choice 4 8 12 given
58 pass.*.timing.turn   list 4000 fine -100..100
59 pass.*.timing.hours  list 4000 o'clock 0..12

60 dial.*.half     choice drive timing
61 dial.*.at       mm 1..1000 40
62 dial.*.order    order

70 pass.*.dial.*.how    choice hour halfway pin turn
71 pass.*.dial.*.tir    fine 0..6.35
72 pass.*.dial.*.high   o'clock 0..12
73 pass.*.dial.*.rise   o'clock 0..12
74 pass.*.dial.*.fall   o'clock 0..12
75 pass.*.dial.*.stands choice above front behind below
76 pass.*.dial.*.pinat  choice - up front down back
77 pass.*.dial.*.points choice 4 8 12 given
78 pass.*.dial.*.turn   list 4000 fine -100..100
79 pass.*.dial.*.hours  list 4000 o'clock 0..12

80 pass.*.since  choice - said first else nuts nothing
81 centres       choice - good
82 tailstock     choice - steady moved
83 clamp         choice turns closing

90 pass.*.done.*.kind     choice strike squeeze spread
91 pass.*.done.*.wheel    choice drive timing
92 pass.*.done.*.hour     o'clock 0..12
93 pass.*.done.*.blows    plain 0.1..100 1
94 pass.*.done.*.strength plain 0.01..50 1
95 pass.*.done.*.order    order
96 pass.*.done.*.turns    plain 0.05..100
97 pass.*.done.*.closing  fine 0.001..25

100 try.seed  words 12
101 try.start choice chance twist pinch skew mismatch
`
