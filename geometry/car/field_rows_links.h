// Rows of the table of numbers: links and their holes. See geometry/car/fields.h for what a row says. Read by
// geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything; not guarded,
// as both read it.

BOLTHOLE_FIELD(holeAt, .scope = Scope::hole, .path = "at", .access = kAt<&Hole::at>,
               .quantity = Quantity::length, .limits = &kPosition, .words = "hole")

BOLTHOLE_FIELD(
    linkLength, .scope = Scope::link, .path = "length", .access = kAt<&Link::length>,
    .quantity = Quantity::length, .limits = &kPositiveLength, .words = "length",
    .meaning =
        "Length the rod is built to, center to center; absent: the distance between the holes in use at the "
        "measured pose, that is, set to fit",
    .label = "Length", .name = "%1, length center to center",
    .howTo = {"Center to center of the two bolts as the link is built: a tape over both bolt heads, or the "
              "link on the bench. Left empty, the link is taken to fit the holes in use."},
    .caution = Caution::bench)

BOLTHOLE_FIELD(adjusterPitch, .scope = Scope::link, .path = "adjuster.pitch",
               .access = kAt<&Link::adjuster, &Adjuster::pitch>, .quantity = Quantity::length,
               .limits = &kPitch, .words = "thread pitch", .meaning = "Thread pitch", .isMeasured = false,
               .label = "Thread pitch", .name = "%1, thread pitch of the adjuster",
               .howTo = {"From thread to thread: 1 in divided by the threads per inch. 3/4-16 has 16 threads "
                         "per inch: type 1/16 (1.5875 mm); for 18, type 1/18."})

BOLTHOLE_FIELD(adjusterEnds, .scope = Scope::link, .path = "adjuster.ends",
               .access = kAt<&Link::adjuster, &Adjuster::threadedEnds>, .quantity = Quantity::count,
               .limits = &kEnds, .words = "threaded ends",
               .meaning = "2: left- and right-hand ends that counter-turn; 1: one end, taken off and turned",
               .isTyped = false, .label = "Adjuster", .name = "%1, adjuster",
               .howTo = {"Both ends threaded, left and right hand: turning the tube changes the length by "
                         "two pitches a turn. One end threaded: the end comes off its bolt and turns in "
                         "halves. Keep enough thread engaged and tighten the jam nuts."})

BOLTHOLE_FIELD(adjusterShortest, .scope = Scope::link, .path = "adjuster.shortest",
               .access = kAt<&Link::adjuster, &Adjuster::shortest>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "shortest length",
               .meaning = "Length the rod can be set to at least, center to center; absent: no limit known",
               .isMeasured = false, .label = "Shortest", .name = "%1, shortest length",
               .howTo = {"Center to center with both ends screwed in as far as they go, on the bench. Left "
                         "empty, nothing is marked."})

BOLTHOLE_FIELD(adjusterLongest, .scope = Scope::link, .path = "adjuster.longest",
               .access = kAt<&Link::adjuster, &Adjuster::longest>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "longest length",
               .meaning = "Length the rod can be set to at most; absent: no limit known", .isMeasured = false,
               .label = "Longest", .name = "%1, longest length",
               .howTo = {"Center to center with the ends screwed out as far as they may. Left empty, the "
                         "thread held alone decides."})

BOLTHOLE_FIELD(
    adjusterEngagement, .scope = Scope::link, .path = "adjuster.engagement",
    .access = kAt<&Link::adjuster, &Adjuster::engagement>, .quantity = Quantity::length,
    .limits = &kEngagement, .words = "thread engagement",
    .meaning = "Thread held in each threaded end at the length engagement_at; absent: not measured",
    .label = "Thread engagement", .name = "%1, thread engagement in each end",
    .howTo = {"How much thread each threaded end holds as the rod is built now: the thread's whole length "
              "less what shows past the jam nut, or a wire down the inspection hole. The length it was "
              "measured at is kept with it."})

BOLTHOLE_FIELD(adjusterEngagementAt, .scope = Scope::link, .path = "adjuster.engagement_at",
               .access = kAt<&Link::adjuster, &Adjuster::engagementAt>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "length at that engagement",
               .meaning = "The rod's length when its engagement was measured; absent: as it is built now",
               .label = "Measured at", .name = "%1, length at which the thread was measured",
               .howTo = {"The rod's length, center to center, when that engagement was measured."})

BOLTHOLE_FIELD(adjusterLeastEngagement, .scope = Scope::link, .path = "adjuster.least_engagement",
               .access = kAt<&Link::adjuster, &Adjuster::leastEngagement>, .quantity = Quantity::length,
               .limits = &kEngagement, .words = "least thread engagement",
               .meaning = "Thread that must stay held in each end; absent: no limit known",
               .isMeasured = false, .label = "Thread engagement, least",
               .name = "%1, least thread engagement in each end",
               .howTo = {
                   "How much thread must stay held in each end: the manufacturer's spec or the rule book's. "
                   "A rod end with too little pulls out under load. Left empty, nothing is marked."})

BOLTHOLE_FIELD(rodEndLimit, .scope = Scope::link, .path = "rod_end_limit", .access = kAt<&Link::rodEndLimit>,
               .quantity = Quantity::angle, .limits = &kJointLimit, .words = "rod-end angle limit",
               .meaning =
                   "How far a rod end may lean out of the plane square to its bolt before it binds; absent: "
                   "no limit known",
               .isMeasured = false, .label = "Rod-end misalignment, largest",
               .name = "%1, largest rod-end misalignment",
               .howTo = {
                   "How far a rod end may lean to either side before its body touches the bracket or "
                   "the spacers: the manufacturer's spec, or an angle finder on the rod with the end bolted "
                   "in. Bushings: as far as their manufacturer allows. Left empty, nothing is marked."})

BOLTHOLE_FIELD(linkRating, .scope = Scope::link, .path = "rating", .access = kAt<&Link::rating>,
               .quantity = Quantity::force, .limits = &kPositiveForce, .words = "rating",
               .meaning = "What the link's weakest part may carry, as entered; absent: not compared",
               .isMeasured = false, .label = "%1", .name = "%1, rating",
               .howTo = {
                   "What the link's weakest part may carry, as its manufacturer states it for this use: the "
                   "rod end, the bushing, the tube, the bolt or the bracket, whichever is least. Left "
                   "empty, nothing is held against it."})
