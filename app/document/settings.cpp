#include "app/document/settings.h"

#include <QSettings>
#include <algorithm>
#include <array>

#include "app/document/sha256.h"

namespace bolthole {

namespace {

constexpr qsizetype kMostRecent = 8;
constexpr std::array<const char*, 3> kInchWords{"sixteenths", "thirty-seconds", "decimal"};
constexpr std::array<const char*, 3> kAppearanceWords{"desktop", "light", "dark"};
constexpr std::array<const char*, 4> kViewWords{"side", "rear", "top", "all"};

QSettings store() {
    return {QSettings::IniFormat, QSettings::UserScope, QStringLiteral("bolthole"),
            QStringLiteral("bolthole")};
}

// The index of the stored word, or 0: an unknown word is another version's, and the default holds.
template <std::size_t N>
std::size_t wordIndex(const QVariant& stored, const std::array<const char*, N>& words) {
    const QString text = stored.toString();
    const auto* found =
        std::ranges::find_if(words, [&](const char* word) { return text == QLatin1String(word); });
    return found == words.end() ? 0 : static_cast<std::size_t>(found - words.begin());
}

// Headers may be long and hold anything; a key may not.
QString tableKey(const QStringList& headers) {
    const QByteArray joined = headers.join(QLatin1Char('\n')).toUtf8();
    return QStringLiteral("columns/") + QString::fromLatin1(sha256Of(joined).left(16));
}

}  // namespace

Settings Settings::load() {
    const QSettings stored = store();
    Settings settings;
    settings.recentFiles = stored.value(QStringLiteral("recentFiles")).toStringList();
    settings.recentFiles.removeAll(QString());
    settings.recentFiles = settings.recentFiles.mid(0, kMostRecent);
    settings.inches = static_cast<InchStyle>(wordIndex(stored.value(QStringLiteral("inches")), kInchWords));
    settings.appearance =
        static_cast<Appearance>(wordIndex(stored.value(QStringLiteral("appearance")), kAppearanceWords));
    settings.view = static_cast<ViewDeck::Shown>(wordIndex(stored.value(QStringLiteral("view")), kViewWords));
    settings.showsUncertainty = stored.value(QStringLiteral("showsSure"), true).toBool();
    if (const QVariant still = stored.value(QStringLiteral("keepsStill")); still.isValid()) {
        settings.keepsStill = still.toBool();
    }
    settings.windowGeometry = stored.value(QStringLiteral("windowGeometry")).toByteArray();
    settings.benchSplit = stored.value(QStringLiteral("benchSplit")).toByteArray();
    settings.panelSplit = stored.value(QStringLiteral("panelSplit")).toByteArray();
    return settings;
}

void Settings::save() const {
    QSettings stored = store();
    stored.setValue(QStringLiteral("recentFiles"), recentFiles);
    stored.setValue(QStringLiteral("inches"), QLatin1String(kInchWords[static_cast<std::size_t>(inches)]));
    stored.setValue(QStringLiteral("appearance"),
                    QLatin1String(kAppearanceWords[static_cast<std::size_t>(appearance)]));
    stored.setValue(QStringLiteral("view"), QLatin1String(kViewWords[static_cast<std::size_t>(view)]));
    stored.setValue(QStringLiteral("showsSure"), showsUncertainty);
    if (keepsStill) {
        stored.setValue(QStringLiteral("keepsStill"), *keepsStill);
    }
    stored.setValue(QStringLiteral("windowGeometry"), windowGeometry);
    stored.setValue(QStringLiteral("benchSplit"), benchSplit);
    stored.setValue(QStringLiteral("panelSplit"), panelSplit);
}

QStringList Settings::columnsOf(const QStringList& headers) {
    return store().value(tableKey(headers)).toStringList();
}

void Settings::rememberColumns(const QStringList& headers, const QStringList& columns) {
    store().setValue(tableKey(headers), columns);
}

void Settings::remember(const QString& fileName) {
    recentFiles.removeAll(fileName);
    recentFiles.prepend(fileName);
    recentFiles = recentFiles.mid(0, kMostRecent);
}

}  // namespace bolthole
