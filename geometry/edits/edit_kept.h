// How the edits of kept states change a car; part of apply() in geometry/edits/edit.h, which is what others
// call.
#pragma once

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// Changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const KeepState& edit);
[[nodiscard]] std::string applyTo(Car& car, const DescribeKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const SetBefore& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const RestoreKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const SwapBefore& edit);

/// Takes name and note of a kept state off a bench that is no longer what was kept under it: `was` before an
/// edit other than RestoreKept and SwapBefore.
void forgetChangedState(Car& car, const Car& was);

}  // namespace bolthole
