#include "app/window/window_start.h"

#include <QApplication>
#include <QIcon>
#include <QLocale>
#include <QPainter>
#include <QScreen>
#include <QTimer>
#include <algorithm>
#include <cstdio>

#include "app/commands/command_line.h"
#include "app/window/main_window.h"

namespace bolthole {

namespace {

bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

// Two links' lines through the instant center, and a bolted hole.
QIcon programIcon() {
    QIcon icon;
    for (const int size : {16, 24, 32, 48, 64, 128, 256}) {
        QPixmap picture(size, size);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(size / 32.0, size / 32.0);
        const Theme colors = Theme::light();
        painter.setPen(Qt::NoPen);
        painter.setBrush(colors.window);
        painter.drawRoundedRect(QRectF(1, 1, 30, 30), 6, 6);
        painter.setPen(QPen(colors.upper, 3, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(7, 8), QPointF(25, 16));
        painter.setPen(QPen(colors.lower, 3, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(7, 24), QPointF(25, 16));
        painter.setPen(QPen(colors.instantCenter, 2.4));
        painter.setBrush(colors.card);
        painter.drawEllipse(QPointF(25, 16), 4, 4);
        painter.setPen(QPen(colors.ink, 2.4));
        painter.drawEllipse(QPointF(7, 24), 2.6, 2.6);
        painter.end();
        icon.addPixmap(picture);
    }
    return icon;
}

}  // namespace

void fitOnScreen(QWidget& window, const QRect& available) {
    constexpr QSize kFrame(8, 40);  // px, of a title bar and borders; not known before the window is shown
    if (window.isMaximized() || window.isFullScreen()) {
        return;
    }
    const QRect room(available.topLeft(), available.size() - kFrame);
    window.resize(window.size().boundedTo(room.size()));
    QRect place(window.pos(), window.size());
    place.moveRight(std::min(place.right(), room.right()));
    place.moveBottom(std::min(place.bottom(), room.bottom()));
    place.moveLeft(std::max(place.left(), room.left()));
    place.moveTop(std::max(place.top(), room.top()));
    window.move(place.topLeft());
}

int runWindow(int argc, char** argv) {
    if (!hasDisplay()) {
        std::fputs("bolthole: no display for a window; `bolthole --help` lists the commands that need none\n",
                   stderr);
        return static_cast<int>(ExitCode::badUse);
    }
    QApplication::setHighDpiScaleFactorRoundingPolicy(Qt::HighDpiScaleFactorRoundingPolicy::PassThrough);
    QApplication app(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Bolthole"));
    QApplication::setApplicationVersion(QStringLiteral(BOLTHOLE_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("bolthole"));
    QApplication::setWindowIcon(programIcon());
    QLocale::setDefault(QLocale::c());
    Settings settings = Settings::load();
    ThemeKeeper::instance().choose(settings.appearance);
    MainWindow window(std::move(settings));
    fitOnScreen(window, window.screen()->availableGeometry());
    const QStringList words = QApplication::arguments();
    const QString problem = window.openAtStart(words.value(1), QStringLiteral("long-roof-wagon.bolt.json"));
    if (!problem.isEmpty()) {
        std::fprintf(stderr, "bolthole: %s\n", qPrintable(problem));
    }
    window.show();
    QTimer::singleShot(0, &window, [&window] { window.offerLeftBehind(); });
    return QApplication::exec();
}

}  // namespace bolthole
