// Colors, type and spacing of the whole program, light and dark.
//
// Hues come from the color-blind-safe set of Okabe & Ito, "Color Universal Design" (2008): blue, vermillion,
// bluish green, orange, reddish purple, sky blue. In the light theme they are darker than printed there, so
// that words in them can be read: 4.5:1 against what they stand on (WCAG 2.2, SC 1.4.3). No meaning is
// carried by color alone: links also differ by label and line, the instant center by shape, the "before" by
// dashes.
#pragma once

#include <QColor>
#include <QFont>
#include <QObject>

class QApplication;

namespace bolthole {

/// What a color is for. Views ask for a use, never for a literal color.
struct Theme {
    bool dark = false;
    QColor window;         ///< behind the cards
    QColor panel;          ///< the car sheet's ground
    QColor card;           ///< cards, fields, plots
    QColor canvas;         ///< the side view's sky
    QColor earth;          ///< below the ground line
    QColor border;         ///< card and field outlines
    QColor grid;           ///< grid lines
    QColor ink;            ///< text and main lines
    QColor muted;          ///< secondary text; at least 4.5:1 against card
    QColor metal;          ///< tires, axle, chassis outlines
    QColor metalFill;      ///< tire and housing fill
    QColor lower;          ///< lower links: blue
    QColor upper;          ///< upper links: vermillion
    QColor crosswise;      ///< track bars and guides: reddish purple
    QColor instantCenter;  ///< instant center, swing arm, curves: bluish green
    QColor reference;      ///< 100 % line, CG
    QColor focus;          ///< focus rings and selection
    QColor problem;        ///< faults and warnings; text-safe against card
    QColor baseline;       ///< the ghost of a kept setup
    QColor starting;       ///< ground of a field whose number nobody measured; ink on it at least 4.5:1
    QColor startingMark;   ///< the dots below such a number; at least 3:1 against card and `starting`

    [[nodiscard]] static Theme light();
    [[nodiscard]] static Theme darkOne();
};

/// What the person chose; followDesktop reads the desktop's palette at start.
enum class Appearance { followDesktop, light, dark };

/// Holds the theme in force and tells the views when it changes.
class ThemeKeeper : public QObject {
    Q_OBJECT
  public:
    static ThemeKeeper& instance();

    [[nodiscard]] const Theme& theme() const { return theme_; }
    [[nodiscard]] Appearance appearance() const { return appearance_; }
    /// Sets palette, style sheet and fonts of the application and repaints everything.
    void choose(Appearance appearance);

  signals:
    void changed();

  private:
    ThemeKeeper();
    void install();

    Theme theme_;
    Appearance appearance_ = Appearance::followDesktop;
    bool desktopIsDark_ = false;
    bool installed_ = false;  // what is the same in every theme
};

/// The theme in force.
[[nodiscard]] inline const Theme& theme() {
    return ThemeKeeper::instance().theme();
}

/// Type sizes in points, from the application font: small print, body, card titles, the big figures.
enum class TextSize { small, body, title, figure };
[[nodiscard]] QFont textFont(TextSize size, bool bold = false);

}  // namespace bolthole
