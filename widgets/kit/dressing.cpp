#include "widgets/kit/dressing.h"

#include <QApplication>
#include <QEvent>
#include <QMainWindow>
#include <QPointer>
#include <QWidget>

namespace bolthole {

Dressing::Dressing() {
    QCoreApplication::instance()->installEventFilter(this);
}

Dressing& Dressing::instance() {
    // The application's, which a test may make anew.
    static QPointer<Dressing> dressing;
    if (dressing.isNull()) {
        dressing = new Dressing;
        dressing->setParent(QCoreApplication::instance());
    }
    return *dressing;
}

void Dressing::wear(QWidget* part) {
    if (!parts_.contains(part)) {
        connect(part, &QObject::destroyed, this, [this](QObject* gone) { parts_.remove(gone); });
    }
    put(part);
}

void Dressing::put(QWidget* part) {
    parts_.insert(part, version_);
    part->setStyleSheet(sheet_);
}

void Dressing::change(const QString& sheet) {
    if (sheet == sheet_) {
        return;
    }
    sheet_ = sheet;
    ++version_;
    for (QWidget* widget : QApplication::allWidgets()) {
        if (widget->isVisible() && parts_.contains(widget)) {
            put(widget);
        }
    }
}

bool Dressing::isInPart(const QWidget* widget) const {
    for (const QWidget* around = widget->parentWidget(); around != nullptr; around = around->parentWidget()) {
        if (parts_.contains(around)) {
            return true;
        }
    }
    return false;
}

bool Dressing::eventFilter(QObject* watched, QEvent* event) {
    if (watched->isWidgetType()) {
        auto* widget = static_cast<QWidget*>(watched);
        if (event->type() == QEvent::Polish && widget->isWindow() &&
            qobject_cast<QMainWindow*>(widget) == nullptr && !isInPart(widget)) {
            wear(widget);
        } else if (event->type() == QEvent::Show && parts_.value(widget, version_) != version_) {
            put(widget);
        }
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace bolthole
