#include "app/window/desktop_motion.h"

#include <QCoreApplication>
#include <QProcess>
#include <QSettings>
#include <QStandardPaths>

namespace bolthole {

namespace {

// The value of a key in one of the desktop's files in the person's configuration folder.
QString configured(const QString& file, const QString& key) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
    return QSettings(folder + u'/' + file, QSettings::IniFormat).value(key).toString().toLower();
}

}  // namespace

bool desktopWishesStill() {
    for (const char* file : {"gtk-4.0/settings.ini", "gtk-3.0/settings.ini"}) {
        const QString animations =
            configured(QLatin1String(file), QStringLiteral("Settings/gtk-enable-animations"));
        if (animations == QLatin1String("0") || animations == QLatin1String("false")) {
            return true;
        }
    }
    bool isNumber = false;
    const double factor =
        configured(QStringLiteral("kdeglobals"), QStringLiteral("KDE/AnimationDurationFactor"))
            .toDouble(&isNumber);
    return isNumber && factor <= 0;
}

void askDesktopForStill(QObject* owner, const std::function<void(bool still)>& told) {
    const QString tool = QStandardPaths::findExecutable(QStringLiteral("gsettings"));
    if (tool.isEmpty()) {
        return;
    }
    // The application's, not the owner's: a window that closes at once would have to wait for the answer.
    auto* asked = new QProcess(QCoreApplication::instance());
    QObject::connect(asked, &QProcess::finished, owner, [asked, told](int code) {
        told(code == 0 && asked->readAllStandardOutput().trimmed() == "false");
    });
    QObject::connect(asked, &QProcess::finished, asked, &QObject::deleteLater);
    asked->start(tool, {QStringLiteral("get"), QStringLiteral("org.gnome.desktop.interface"),
                        QStringLiteral("enable-animations")});
}

}  // namespace bolthole
