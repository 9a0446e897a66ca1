#include "geometry/car/pass.h"

#include <algorithm>
#include <iterator>

namespace bolthole {

namespace {

std::string spaced(std::string_view key) {
    std::string words(key);
    std::ranges::replace(words, '_', ' ');
    return words;
}

}  // namespace

const std::array<std::string_view, kSurfaceKinds>& surfaceKindKeys() {
    static constexpr std::array<std::string_view, kSurfaceKinds> kKeys{"prepped_track", "unprepped_track",
                                                                       "street"};
    return kKeys;
}

std::string_view nameOf(SurfaceKind kind) {
    switch (kind) {
        case SurfaceKind::preppedTrack:
            return "prepped track";
        case SurfaceKind::unpreppedTrack:
            return "unprepped track";
        case SurfaceKind::street:
            break;
    }
    return "street";
}

const std::array<std::string_view, kSeenCount>& seenKeys() {
    static constexpr std::array<std::string_view, kSeenCount> kKeys{
        "nose_topped_out", "front_tires_up", "spun_at_hit", "spun_later",
        "bounced",         "paddle_marks",   "moved_left",  "moved_right"};
    return kKeys;
}

std::string nameOf(Seen seen) {
    return spaced(seenKeys()[static_cast<std::size_t>(seen)]);
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
    return "pass " + std::to_string(pass.number) + " of " + pass.date;
}

}  // namespace bolthole
