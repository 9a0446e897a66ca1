// What the program remembers between starts. Nothing here decides a result.
#pragma once

#include <QByteArray>
#include <QStringList>
#include <optional>

#include "geometry/units/text.h"
#include "widgets/kit/theme.h"
#include "widgets/views/view_deck.h"

namespace bolthole {

/// Read once at start, written when changed. A damaged or foreign settings file gives the defaults.
struct Settings {
    QStringList recentFiles;  ///< newest first, absolute paths
    InchStyle inches = InchStyle::sixteenths;
    Appearance appearance = Appearance::followDesktop;
    ViewDeck::Shown view = ViewDeck::Shown::side;  ///< the bench's view, as chosen
    bool showsUncertainty = true;                  ///< the uncertainty of the figures is to be seen
    /// Whether pictures that could play stand still; absent: as the desktop wishes.
    std::optional<bool> keepsStill = std::nullopt;
    QByteArray windowGeometry;
    QByteArray benchSplit;
    QByteArray panelSplit;

    [[nodiscard]] static Settings load();
    void save() const;
    /// What the columns of a table with these headers were said to be last, as lines of text; empty: never.
    [[nodiscard]] static QStringList columnsOf(const QStringList& headers);
    static void rememberColumns(const QStringList& headers, const QStringList& columns);
    /// Puts a file first among the recent ones, eight at most.
    void remember(const QString& fileName);
};

}  // namespace bolthole
