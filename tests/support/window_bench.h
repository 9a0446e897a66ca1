// A whole window with a demo car in it, as a person finds it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <QUndoStack>
#include <functional>
#include <memory>

#include "app/document/settings.h"
#include "app/window/main_window.h"
#include "tests/support/typing.h"
#include "tests/support/watched.h"
#include "widgets/kit/theme.h"

namespace bolthole::test {

inline constexpr const char* kWagonDemo = "long-roof-wagon.bolt.json";
inline constexpr const char* kCoupeDemo = "light-coupe.bolt.json";

class WindowBench : public testing::Test {
  protected:
    /// In the light theme, shown and active, the demo opened.
    void openWindow(const char* demo, const QSize& size) { openWindow(demo, size, usualSettings()); }
    void openWindow(const char* demo, const QSize& size, const Settings& settings) {
        ThemeKeeper::instance().choose(Appearance::light);
        window_ = std::make_unique<MainWindow>(settings);
        window_->resize(size);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
        window_->openDemo(QString::fromLatin1(demo));
        QCoreApplication::processEvents();
    }
    void TearDown() override {
        window_->document().undoStack().setClean();  // no question about unsaved changes
        window_.reset();
        ThemeKeeper::instance().choose(Appearance::light);
    }

    /// Under AddressSanitizer without uncertainty, whose drawn samples would take most of the time; tests of
    /// it ask for it.
    [[nodiscard]] static Settings usualSettings() {
        Settings settings;
        settings.showsUncertainty = !isWatched();
        return settings;
    }
    /// Alt and a page's key.
    void openPage(Qt::Key key) {
        QTest::keyClick(window_.get(), key, Qt::AltModifier);
        QCoreApplication::processEvents();
    }
    void undo() {
        QTest::keyClick(window_.get(), Qt::Key_Z, Qt::ControlModifier);
        QCoreApplication::processEvents();
    }
    /// From wherever the keyboard is, by Tab alone.
    static bool tabTo(const std::function<bool(QWidget*)>& isSought) {
        for (int step = 0; step < 200; ++step) {
            if (isSought(QApplication::focusWidget())) {
                return true;
            }
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        }
        return false;
    }
    static bool tabTo(const QWidget* wanted) {
        return tabTo([wanted](QWidget* here) { return here == wanted; });
    }

    std::unique_ptr<MainWindow> window_;
};

}  // namespace bolthole::test
