// A person at the window who does anything at any time: clicks, drags, types sense and nonsense, opens menus,
// answers dialogs, undoes in the middle of it. The same seed does the same.
#pragma once

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QFileDialog>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QMouseEvent>
#include <QPointer>
#include <QPushButton>
#include <QTabBar>
#include <QTimer>
#include <QWheelEvent>
#include <QtTest/QTest>
#include <random>

#include "app/window/main_window.h"
#include "widgets/pages/launch/click_stepper.h"
#include "widgets/pages/launch/film_bar.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/launch/launch_picture.h"
#include "widgets/views/side_view.h"

namespace bolthole::test {

/// Drives one window. `file`: where it saves.
class RandomUser {
  public:
    RandomUser(MainWindow& window, unsigned seed, QString file)
        : window_(window), random_(seed), file_(std::move(file)) {
        answers_.setInterval(1);
        QObject::connect(&answers_, &QTimer::timeout, &answers_, [this] { answer(); });
        answers_.start();
    }

    /// One action; gives it in words.
    QString act() {
        using Action = QString (RandomUser::*)();
        constexpr std::array<Action, 22> kActions{
            &RandomUser::dragInSideView, &RandomUser::dragInSideView, &RandomUser::keyInSideView,
            &RandomUser::keyInSideView,  &RandomUser::typeInField,    &RandomUser::typeInField,
            &RandomUser::typeInField,    &RandomUser::typeInField,    &RandomUser::clickSomething,
            &RandomUser::clickSomething, &RandomUser::clickSomething, &RandomUser::clickSomething,
            &RandomUser::chooseEntry,    &RandomUser::chooseEntry,    &RandomUser::keySomewhere,
            &RandomUser::wheel,          &RandomUser::undo,           &RandomUser::undo,
            &RandomUser::redo,           &RandomUser::sizeOrSave,     &RandomUser::turnPage,
            &RandomUser::playLaunch};
        QString words = (this->*kActions[number(kActions.size())])();
        QCoreApplication::processEvents();
        // What was asked is answered before the next action.
        for (int turn = 0; turn < 2000 && isAsked(); ++turn) {
            QTest::qWait(1);
        }
        return words;
    }
    [[nodiscard]] static bool isAsked() {
        return QApplication::activeModalWidget() != nullptr || QApplication::activePopupWidget() != nullptr;
    }
    void trigger(const QString& words) {
        for (QAction* action : window_.findChildren<QAction*>()) {
            if (action->text().remove(QLatin1Char('&')) == words) {
                action->trigger();
            }
        }
    }

  private:
    std::size_t number(std::size_t below) { return random_() % below; }
    template <class List>
    auto& oneOf(List& list) {
        return list[static_cast<typename List::size_type>(number(static_cast<std::size_t>(list.size())))];
    }
    QString text() {
        static const QStringList kTexts{
            "12 3/8", "12-3/8", "0",      "-4",        "1e308",      "NaN",      "INF",  "100 m",  "314 mm",
            "1,5",    "",       " ",      "abc",       "9999999999", "0.0001",   "25.4", "21 1/2", "1.5",
            "-0",     "24",     "3/0",    "ü\u00d7",   "1.5 deg",    "400",      "120",  "80",     "\n",
            "0x10",   "1/2 in", "250 lb", "175 lb/in", "1.62",       "6200 rpm", "50 %", "600 Nm"};
        return oneOf(kTexts);
    }
    Qt::KeyboardModifiers modifiers() {
        constexpr std::array kAll{Qt::NoModifier, Qt::NoModifier, Qt::NoModifier, Qt::ShiftModifier,
                                  Qt::AltModifier};
        return kAll[number(kAll.size())];
    }
    QPoint placeIn(const QWidget& widget) {
        return {static_cast<int>(number(static_cast<std::size_t>(std::max(1, widget.width())))),
                static_cast<int>(number(static_cast<std::size_t>(std::max(1, widget.height()))))};
    }
    // Letters as an input method gives them, beyond what QTest types.
    static void type(const QPointer<QLineEdit>& field, const QString& typed) {
        for (const QChar letter : typed) {
            if (field) {
                QKeyEvent press(QEvent::KeyPress, 0, Qt::NoModifier, QString(letter));
                QCoreApplication::sendEvent(field, &press);
            }
        }
    }
    static void move(QWidget& widget, QPoint at) {
        QMouseEvent event(QEvent::MouseMove, at, widget.mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                          Qt::NoModifier);
        QCoreApplication::sendEvent(&widget, &event);
    }

    QString dragInSideView() {
        SideView& view = window_.sideView();
        if (!view.isVisible()) {
            return typeInField();
        }
        QPoint at = placeIn(view);
        const Car& car = window_.document().car();
        if (number(4) != 0 && !car.links.empty()) {
            const auto link = number(car.links.size());
            const End end = number(2) == 0 ? End::chassis : End::axle;
            const auto hole = number(car.links[link].bracket(end).holes.size());
            at = view.placeOf({PointId::Kind::hole, static_cast<int>(link), end, static_cast<int>(hole)})
                     .toPoint();
        }
        QTest::mousePress(&view, Qt::LeftButton, modifiers(), at);
        const bool far = number(5) == 0;
        for (std::size_t step = number(5); step > 0; --step) {
            at = far ? placeIn(view)
                     : at + QPoint(static_cast<int>(number(21)) - 10, static_cast<int>(number(21)) - 10);
            move(view, at);
            meddle();
        }
        QTest::mouseRelease(&view, Qt::LeftButton, Qt::NoModifier, at);
        return QStringLiteral("drag in the side view to %1, %2").arg(at.x()).arg(at.y());
    }
    // Now and then something comes between a press and its release.
    void meddle() {
        switch (number(24)) {
            case 0:
                trigger(QStringLiteral("Undo"));
                break;
            case 1:
                trigger(QStringLiteral("Redo"));
                break;
            case 2:
                QTest::keyClick(&window_.sideView(), Qt::Key_Escape);
                break;
            case 3:
                trigger(QStringLiteral("Swap before and after"));
                break;
            default:
                break;
        }
    }
    QString keyInSideView() {
        constexpr std::array kKeys{Qt::Key_Period, Qt::Key_Comma, Qt::Key_Left,   Qt::Key_Right,
                                   Qt::Key_Up,     Qt::Key_Down,  Qt::Key_Return, Qt::Key_Escape,
                                   Qt::Key_Plus,   Qt::Key_Minus, Qt::Key_A};
        const Qt::Key key = kKeys[number(kKeys.size())];
        if (!window_.sideView().isVisible()) {
            return typeInField();
        }
        for (std::size_t times = number(4); times > 0; --times) {
            QTest::keyClick(&window_.sideView(), key, modifiers());
        }
        return QStringLiteral("key %1 in the side view").arg(key);
    }
    template <class Widget>
    QList<Widget*> shown() {
        QList<Widget*> found;
        for (Widget* each : window_.findChildren<Widget*>()) {
            if (each->isVisible() && each->isEnabled()) {
                found.append(each);
            }
        }
        return found;
    }
    QString typeInField() {
        const QList<QLineEdit*> fields = shown<QLineEdit>();
        if (fields.isEmpty()) {
            return QStringLiteral("no field");
        }
        const QPointer<QLineEdit> field = oneOf(fields);
        const QString typed = text();
        const QString name = field->accessibleName();
        field->setFocus();
        field->selectAll();
        type(field, typed);
        constexpr std::array kEnds{Qt::Key_Return, Qt::Key_Return, Qt::Key_Return,
                                   Qt::Key_Tab,    Qt::Key_Escape, Qt::Key_Up};
        const std::size_t end = number(kEnds.size() + 2);
        if (field && end < kEnds.size()) {
            QTest::keyClick(field, kEnds[end]);
        }
        return QStringLiteral("type '%1' into '%2'").arg(typed, name);
    }
    QString clickSomething() {
        const QList<QWidget*> widgets = shown<QWidget>();
        const QPointer<QWidget> widget = oneOf(widgets);
        if (widget == nullptr || widget->isWindow()) {
            return QStringLiteral("nothing clicked");
        }
        const QString name =
            QLatin1String(widget->metaObject()->className()) + QLatin1Char(' ') + widget->accessibleName();
        const QPoint from = placeIn(*widget);
        QTest::mousePress(widget, Qt::LeftButton, modifiers(), from);
        if (widget && number(3) == 0) {
            move(*widget, placeIn(*widget));
        }
        if (widget) {
            QTest::mouseRelease(widget, Qt::LeftButton, Qt::NoModifier, from);
        }
        if (widget && number(6) == 0) {
            QTest::mouseDClick(widget, Qt::LeftButton, Qt::NoModifier, from);
        }
        return QStringLiteral("click %1 at %2, %3").arg(name).arg(from.x()).arg(from.y());
    }
    QString chooseEntry() {
        QList<QAction*> entries;
        for (QAction* action : window_.findChildren<QAction*>()) {
            if (action->isEnabled() && action->menu() == nullptr && !action->isSeparator() &&
                action->text() != QStringLiteral("&Quit")) {
                entries.append(action);
            }
        }
        const QPointer<QAction> entry = oneOf(entries);
        const QString words = entry->text();
        entry->trigger();
        return QStringLiteral("choose '%1'").arg(words);
    }
    QString keySomewhere() {
        constexpr std::array kKeys{Qt::Key_Tab,    Qt::Key_Return,   Qt::Key_Space,  Qt::Key_Escape,
                                   Qt::Key_Up,     Qt::Key_Down,     Qt::Key_Home,   Qt::Key_End,
                                   Qt::Key_PageUp, Qt::Key_PageDown, Qt::Key_Delete, Qt::Key_R};
        QWidget* target = QApplication::focusWidget() != nullptr ? QApplication::focusWidget() : &window_;
        const Qt::Key key = kKeys[number(kKeys.size())];
        const QString name = QLatin1String(target->metaObject()->className());
        QTest::keyClick(target, key, modifiers());
        return QStringLiteral("key %1 in %2").arg(key).arg(name);
    }
    QString wheel() {
        const QList<QWidget*> widgets = shown<QWidget>();
        QWidget* widget = oneOf(widgets);
        const QPoint at = placeIn(*widget);
        QWheelEvent event(at, widget->mapToGlobal(at), {}, {0, number(2) == 0 ? 120 : -120}, Qt::NoButton,
                          Qt::NoModifier, Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(widget, &event);
        return QStringLiteral("wheel");
    }
    QString undo() {
        trigger(QStringLiteral("Undo"));
        return QStringLiteral("undo");
    }
    QString redo() {
        trigger(QStringLiteral("Redo"));
        return QStringLiteral("redo");
    }
    QString turnPage() {
        auto* pages = window_.findChild<QTabBar*>(QStringLiteral("workPages"));
        const int page = static_cast<int>(number(static_cast<std::size_t>(pages->count())));
        pages->setCurrentIndex(page);
        return QStringLiteral("turn to page %1").arg(page);
    }
    // Plays, goes through the time by hand, turns clicks.
    QString playLaunch() {
        auto& page = *window_.findChild<LaunchPage*>();
        if (!page.isVisible()) {
            trigger(QStringLiteral("Launch"));
        }
        if (!page.film()) {
            return QStringLiteral("no launch to play");
        }
        constexpr std::array kKeys{Qt::Key_Space, Qt::Key_Left, Qt::Key_Right, Qt::Key_Home, Qt::Key_End};
        QTest::keyClick(&page.picture(), kKeys[number(kKeys.size())]);
        QTest::mouseClick(&page.bar().track(), Qt::LeftButton, {}, placeIn(page.bar().track()));
        QTest::qWait(static_cast<int>(number(40)));
        const QList<ClickStepper*> clicks = page.findChildren<ClickStepper*>();
        if (!clicks.isEmpty() && number(2) == 0) {
            const ClickStepper* click = oneOf(clicks);
            QTest::mouseClick(number(2) == 0 ? &click->less() : &click->more(), Qt::LeftButton);
        }
        return QStringLiteral("play the launch");
    }
    QString sizeOrSave() {
        if (number(4) == 0) {  // as the file dialog would hand it over, which is only ever given up here
            const std::array cars{"/long-roof-wagon.bolt.json", "/light-coupe.bolt.json"};
            window_.compareWithFile(QStringLiteral(BOLTHOLE_DEMO_DIR) + QLatin1String(cars[number(2)]));
            return QStringLiteral("compare with another car");
        }
        if (number(3) == 0) {
            const bool saved = window_.document().save(file_, true).saved();
            return saved ? QStringLiteral("save") : QStringLiteral("save, refused");
        }
        window_.resize(900 + static_cast<int>(number(900)), 600 + static_cast<int>(number(600)));
        return QStringLiteral("resize");
    }
    // Answers a dialog or menu that is open, as the timer finds it.
    void answer() {
        if (QWidget* popup = QApplication::activePopupWidget()) {
            popup->close();
            return;
        }
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) {
            return;
        }
        if (qobject_cast<QFileDialog*>(dialog) != nullptr || ++turns_ % 50 == 0) {
            dialog->reject();
            return;
        }
        const QList<QLineEdit*> fields = dialog->findChildren<QLineEdit*>();
        if (!fields.isEmpty() && number(2) == 0) {
            QLineEdit* field = oneOf(fields);
            field->selectAll();
            type(field, text());
        }
        const QList<QPushButton*> buttons = dialog->findChildren<QPushButton*>();
        if (!buttons.isEmpty() && number(3) != 0) {
            // Once this returns: a timer does not fire in a loop that its own slot started.
            QMetaObject::invokeMethod(oneOf(buttons), &QAbstractButton::click, Qt::QueuedConnection);
        } else {
            dialog->reject();
        }
    }

    MainWindow& window_;
    std::mt19937 random_;
    QString file_;
    QTimer answers_;
    int turns_ = 0;
};

}  // namespace bolthole::test
