// Finding a widget by what it is called, and typing as a person does.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "widgets/kit/number_field.h"

namespace bolthole::test {

/// What `namedIn` looks among.
enum class Among { seen, all };

/// The present widget of a kind with this accessible name in `root`; null where there is none. `seen`: not
/// one that stands in something folded or hidden.
template <class Kind>
Kind* namedIn(const QWidget& root, const QString& name, Among among = Among::seen) {
    QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    for (Kind* widget : root.findChildren<Kind*>()) {
        if (widget->accessibleName() == name && (among == Among::all || widget->isVisibleTo(&root))) {
            return widget;
        }
    }
    return nullptr;
}

/// Enters the field, types over what stands there and presses Enter.
inline void typeInto(NumberField& field, const QString& text) {
    field.setFocus();
    field.selectAll();
    QTest::keyClicks(&field, text);
    QTest::keyClick(&field, Qt::Key_Return);
}

/// The same in the field of `root` with this accessible name; fails where there is none.
inline void typeIn(const QWidget& root, const QString& name, const QString& text, Among among = Among::seen) {
    auto* field = namedIn<NumberField>(root, name, among);
    ASSERT_NE(field, nullptr) << name.toStdString();
    typeInto(*field, text);
}

}  // namespace bolthole::test
