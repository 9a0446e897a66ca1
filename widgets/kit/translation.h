// Words of functions that belong to no widget.
#pragma once

#include <QCoreApplication>
#include <QString>

namespace bolthole {

/// The text in the person's language. Widgets have their own tr().
[[nodiscard]] inline QString tr(const char* text) {
    return QCoreApplication::translate("Bolthole", text);
}

}  // namespace bolthole
