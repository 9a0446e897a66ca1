// Typing into a field as a person does.
#pragma once

#include <QTest>

#include "widgets/kit/number_field.h"

namespace bolthole::test {

/// Enters the field, types over what stands there and presses Enter.
inline void typeInto(NumberField& field, const QString& text) {
    field.setFocus();
    field.selectAll();
    QTest::keyClicks(&field, text);
    QTest::keyClick(&field, Qt::Key_Return);
}

}  // namespace bolthole::test
