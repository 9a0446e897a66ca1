// Whether the desktop wishes that nothing moves by itself.
#pragma once

#include <functional>

class QObject;

namespace bolthole {

/// Whether the desktop's settings files say so: animations switched off for GTK (settings.ini) or KDE
/// (kdeglobals).
[[nodiscard]] bool desktopWishesStill();

/// Asks the desktop's settings service, which has no file to read, and tells once what it says; never where
/// there is no such service. `owner`: nothing is told when it is gone.
void askDesktopForStill(QObject* owner, const std::function<void(bool still)>& told);

}  // namespace bolthole
