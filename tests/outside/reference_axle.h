// Hands a linkage to the outside libraries.
#pragma once

#include "geometry/kinematics/linkage.h"
#include "tests/outside/reference_links.h"

namespace bolthole {

/// The equations of geometry/kinematics/linkage.h as plain links: a pivot becomes two, one along x and one
/// along z.
[[nodiscard]] inline ReferenceAxle referenceAxle(const Linkage& linkage) {
    ReferenceAxle axle;
    axle.measuredHeight = linkage.measuredHeight;
    const auto add = [&axle](ReferenceLink::Kind kind, const Constraint& link) {
        axle.links.push_back({kind, link.onAxle, link.onChassis, link.length});
    };
    for (const Constraint& link : linkage.constraints) {
        switch (link.kind) {
            case LinkKind::rod:
                add(ReferenceLink::rod, link);
                break;
            case LinkKind::pivot:
                add(ReferenceLink::sameX, link);
                add(ReferenceLink::sameZ, link);
                break;
            case LinkKind::slider:
                add(ReferenceLink::sameZ, link);
                break;
            case LinkKind::guide:
                add(ReferenceLink::sameY, link);
                break;
        }
    }
    return axle;
}

}  // namespace bolthole
