// Words of functions that belong to no widget.
#pragma once

#include <QCoreApplication>
#include <QString>

namespace bolthole {

/// The text in the person's language. Widgets have their own tr().
[[nodiscard]] inline QString tr(const char* text) {
    return QCoreApplication::translate("Bolthole", text);
}

/// The same of `count` things, in the plural form the person's language has for so many; %n in the text
/// becomes the count. English has its text for one written apart, as there is no translation into it.
[[nodiscard]] inline QString tr(const char* text, int count) {
    return QCoreApplication::translate("Bolthole", text, nullptr, count);
}

}  // namespace bolthole
