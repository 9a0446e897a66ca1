// How long a drag step takes: from a mouse event delivered to the window to its backing store flushed. Real
// window, 1920 x 1080, with the uncertainty of the figures shown and hidden. Prints median, 95th percentile
// and worst of the steps, the platform, and resident memory.
//
// Run it by hand: .build/tests/tests/bench/drag_bench   (QT_QPA_PLATFORM=offscreen, or under a display with
// xcb)
#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QScreen>
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <string>
#include <vector>

#include "app/window/main_window.h"
#include "widgets/views/side_view.h"
#include "widgets/views/view_deck.h"

namespace {

using bolthole::MainWindow;

void deliver(QWidget& view, QEvent::Type type, QPointF at, Qt::MouseButtons held) {
    const auto button = type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton;
    QMouseEvent event(type, at, view.mapToGlobal(at), button, held, Qt::NoModifier);
    QCoreApplication::sendEvent(&view, &event);
}

// Everything that is due is painted and flushed: posted updates, then the window system's queue.
void waitUntilIdle() {
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
}

// Milliseconds on the clock and of this process's processor time: on a machine that does other work besides,
// only the second says what a step costs.
struct StepTimes {
    std::vector<double> clock;
    std::vector<double> processor;
};

double processorMilliseconds() {
    return static_cast<double>(std::clock()) * 1e3 / CLOCKS_PER_SEC;
}

// Around the hole by two inches each way, as one who looks for a better place does.
StepTimes dragSteps(MainWindow& window, int steps) {
    bolthole::SideView& view = window.sideView();
    const int used = window.state().car.links[0].chassis.use;
    const bolthole::PointId hole{bolthole::PointId::Kind::hole, 0, bolthole::End::chassis, used};
    const QPointF start = view.placeOf(hole);
    deliver(view, QEvent::MouseButtonPress, start, Qt::LeftButton);
    StepTimes times;
    for (int step = 0; step < steps; ++step) {
        const QPointF at = start + QPointF(step % 40 - 20.0, (step * 7) % 40 - 20.0);
        const double processor = processorMilliseconds();
        QElapsedTimer timer;
        timer.start();
        deliver(view, QEvent::MouseMove, at, Qt::LeftButton);
        waitUntilIdle();
        times.clock.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
        times.processor.push_back(processorMilliseconds() - processor);
    }
    deliver(view, QEvent::MouseButtonRelease, start, Qt::NoButton);
    waitUntilIdle();
    std::ranges::sort(times.clock);
    std::ranges::sort(times.processor);
    return times;
}

void print(const char* what, const std::vector<double>& sorted) {
    std::printf("  %s: median %.2f ms, p95 %.2f ms, worst %.2f ms\n", what, sorted[sorted.size() / 2],
                sorted[sorted.size() * 95 / 100], sorted.back());
}

void dragIn(const char* demo, bolthole::ViewDeck::Shown shown, bool showsUncertainty) {
    bolthole::Settings settings;
    settings.showsUncertainty = showsUncertainty;
    MainWindow window{settings};
    window.openDemo(QString::fromLatin1(demo));
    window.resize(1920, 1080);
    window.show();
    waitUntilIdle();
    window.views().choose(shown);
    waitUntilIdle();
    dragSteps(window, 50);  // caches warm
    const StepTimes times = dragSteps(window, 1000);
    std::printf("%s, %s, %dx%d, %s, %s, drag step\n", demo, qPrintable(QGuiApplication::platformName()),
                window.width(), window.height(),
                shown == bolthole::ViewDeck::Shown::all ? "all three views" : "side view",
                showsUncertainty ? "uncertainty shown" : "uncertainty hidden");
    print("clock    ", times.clock);
    print("processor", times.processor);
    window.document().undoStack().setClean();
}

void printMemory() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.rfind("VmRSS", 0) == 0 || line.rfind("VmHWM", 0) == 0) {
            std::printf("%s\n", line.c_str());
        }
    }
}

}  // namespace

int main(int argc, char** argv) {
    QApplication app(argc, argv);
    bolthole::ThemeKeeper::instance().choose(bolthole::Appearance::light);
    using Shown = bolthole::ViewDeck::Shown;
    for (const char* demo : {"long-roof-wagon.bolt.json", "light-coupe.bolt.json"}) {
        dragIn(demo, Shown::side, true);
        dragIn(demo, Shown::side, false);
        dragIn(demo, Shown::all, true);
    }
    printMemory();
    return 0;
}
