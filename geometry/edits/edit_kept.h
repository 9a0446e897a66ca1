// How the edits of kept setups change a car; part of apply() in geometry/edits/edit.h, which is what others
// call.
#pragma once

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// Changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const KeepSetup& edit);
[[nodiscard]] std::string applyTo(Car& car, const DescribeKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const SetBaseline& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const RestoreKept& edit);
[[nodiscard]] std::string applyTo(Car& car, const SwapBaseline& edit);

/// Takes name and note of a kept setup off a bench that is no longer what was kept under it: `was` before an
/// edit other than RestoreKept and SwapBaseline.
void forgetChangedState(Car& car, const Car& was);

}  // namespace bolthole
