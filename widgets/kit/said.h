// What the bottom floor says, in the person's language: its sentences and the texts it marks by phrase().
#pragma once

#include <QString>
#include <string_view>

namespace bolthole {

/// From now on the sentences of geometry/ and of the car file's reader (geometry/units/say.h) come from the
/// application's translators, in the context of translation.h's tr(). For the window alone, before it
/// composes anything: what commands print stays English. Calling it again changes nothing.
void translateSaid();

/// A text marked by phrase() in the person's language.
[[nodiscard]] QString said(std::string_view text);

}  // namespace bolthole
