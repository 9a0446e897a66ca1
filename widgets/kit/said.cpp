#include "widgets/kit/said.h"

#include "geometry/units/say.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

std::string translated(const char* text, int count) {
    return (count < 0 ? tr(text) : tr(text, count)).toStdString();
}

}  // namespace

void translateSaid() {
    setSayTranslator(&translated);
}

QString said(std::string_view text) {
    return QString::fromStdString(say(text));
}

}  // namespace bolthole
