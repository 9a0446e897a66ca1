#include "geometry/car/pass.h"

#include <algorithm>
#include <iterator>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr std::array<std::string_view, kSeenCount> kSeenWords{
    phrase("nose topped out"), phrase("front tires up"), phrase("spun at hit"), phrase("spun later"),
    phrase("bounced"),         phrase("paddle marks"),   phrase("moved left"),  phrase("moved right")};

}  // namespace

const std::array<std::string_view, kSurfaceKinds>& surfaceKindKeys() {
    static constexpr std::array<std::string_view, kSurfaceKinds> kKeys{"prepped_track", "unprepped_track",
                                                                       "street"};
    return kKeys;
}

std::string_view nameOf(SurfaceKind kind) {
    switch (kind) {
        case SurfaceKind::preppedTrack:
            return phrase("prepped track");
        case SurfaceKind::unpreppedTrack:
            return phrase("unprepped track");
        case SurfaceKind::street:
            break;
    }
    return phrase("street");
}

const std::array<std::string_view, kSeenCount>& seenKeys() {
    static constexpr std::array<std::string_view, kSeenCount> kKeys{
        "nose_topped_out", "front_tires_up", "spun_at_hit", "spun_later",
        "bounced",         "paddle_marks",   "moved_left",  "moved_right"};
    return kKeys;
}

std::string nameOf(Seen seen) {
    return say(kSeenWords[static_cast<std::size_t>(seen)]);
}

bool isLater(const Pass& one, const Pass& other) {
    if (one.date != other.date) {
        return one.date > other.date;
    }
    return !one.time.empty() && !other.time.empty() && one.time > other.time;
}

void insertInOrder(std::vector<Pass>& passes, const Pass& pass) {
    auto place = passes.end();
    while (place != passes.begin() && isLater(*std::prev(place), pass)) {
        --place;
    }
    passes.insert(place, pass);
}

std::string passWords(const Pass& pass) {
    return say("pass %1 of %2", pass.number, pass.date);
}

}  // namespace bolthole
