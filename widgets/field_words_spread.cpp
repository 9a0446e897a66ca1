// Words of the fields for how sure a number is.
#include <QCoreApplication>

#include "geometry/uncertain_inputs.h"
#include "widgets/entered_words.h"
#include "widgets/unit_text.h"

namespace bolthole {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("FieldWords", text);
}

}  // namespace

FieldWords spreadWords(const Car& car, const FieldId& id) {
    FieldId number = id;
    number.spread = false;
    return {QStringLiteral("±"),
            tr("%1, plus or minus").arg(QString::fromStdString(numberWords(car, number))),
            tr("How far this one number may be off: 95 of 100 lie within. Left empty, it is as sure as the "
               "tool such numbers are taken with; 0: exact.")};
}

}  // namespace bolthole
