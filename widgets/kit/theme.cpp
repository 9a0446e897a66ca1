#include "widgets/kit/theme.h"

#include <QApplication>
#include <QFontDatabase>
#include <QPalette>
#include <QWidget>
#include <array>
#include <optional>

#include "widgets/kit/calm_style.h"
#include "widgets/kit/dressing.h"
#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

/// The application font the sizes are reckoned from. Tabular digits are the plain ones in the fonts asked
/// for.
QFont applicationFont() {
    QFont font = QApplication::font();
    const QStringList wanted{QStringLiteral("Inter"), QStringLiteral("Noto Sans"),
                             QStringLiteral("DejaVu Sans")};
    const QStringList families = QFontDatabase::families();
    for (const QString& family : wanted) {
        if (families.contains(family)) {
            font.setFamilies({family});
            break;
        }
    }
    font.setPointSizeF(9.5);
    return font;
}

QPalette paletteFor(const Theme& theme) {
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, const QColor& color) { palette.setColor(role, color); };
    set(QPalette::Window, theme.window);
    set(QPalette::WindowText, theme.ink);
    set(QPalette::Base, theme.card);
    set(QPalette::AlternateBase, theme.panel);
    set(QPalette::Text, theme.ink);
    set(QPalette::Button, theme.card);
    set(QPalette::ButtonText, theme.ink);
    set(QPalette::ToolTipBase, theme.card);
    set(QPalette::ToolTipText, theme.ink);
    set(QPalette::PlaceholderText, theme.muted);
    set(QPalette::Highlight, theme.focus);
    set(QPalette::HighlightedText, theme.dark ? QColor(0x10, 0x12, 0x14) : QColor(Qt::white));
    set(QPalette::Link, theme.focus);
    set(QPalette::Mid, theme.border);
    set(QPalette::Dark, theme.border.darker(120));
    set(QPalette::Light, theme.card.lighter(105));
    for (const auto role : {QPalette::Text, QPalette::WindowText, QPalette::ButtonText}) {
        QColor faded = theme.muted;
        faded.setAlphaF(0.6F);
        palette.setColor(QPalette::Disabled, role, faded);
    }
    return palette;
}

constexpr const char* kStyleOfFields = R"(
        QToolTip { color: %1; background: %2; border: 1px solid %3; padding: 4px 6px; }
        QLineEdit, QPlainTextEdit, QComboBox { background: %2; color: %1; border: 1px solid %3; border-radius: 4px;
            padding: 2px 6px; selection-background-color: %4; }
        QLineEdit:focus, QPlainTextEdit:focus, QComboBox:focus { border: 2px solid %4; padding: 1px 5px; }
        QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
        bolthole--CalmCombo::drop-down { border: none; width: 18px; }
        QTabWidget::pane { border: none; border-top: 1px solid %3; }
        QTabBar { qproperty-drawBase: 0; }
        QTabBar::tab { background: transparent; color: %6; border: none; border-bottom: 2px solid transparent;
            padding: 6px 12px 5px 12px; margin-right: 2px; }
        QTabBar::tab:hover { color: %1; }
        QTabBar::tab:selected { color: %1; border-bottom: 2px solid %4; }
        QTabBar::tab:focus { color: %4; }
        QLineEdit[unmeasured="true"] { background: %10; }
        QLineEdit[problem="true"] { border: 2px solid %5; padding: 1px 5px; }
        QPushButton, QToolButton { background: %2; color: %1; border: 1px solid %3; border-radius: 4px; padding: 4px 10px; }
        QPushButton:hover, QToolButton:hover { border-color: %4; }
        QPushButton:focus, QToolButton:focus { border: 2px solid %4; padding: 3px 9px; outline: none; }
        QPushButton:disabled, QToolButton:disabled { color: %6; border-color: %7; }
        QMenuBar { background: %2; color: %1; border-bottom: 1px solid %3; }
        QMenuBar::item { padding: 5px 10px; background: transparent; }
        QMenuBar::item:selected { background: %8; border-radius: 4px; }
        QMenu { background: %2; color: %1; border: 1px solid %3; padding: 4px; }
        QMenu::item { padding: 4px 24px 4px 20px; border-radius: 3px; }
        QMenu::item:selected { background: %4; color: %9; }
        QMenu::item:disabled { color: %6; }
        QMenu::separator { height: 1px; background: %3; margin: 4px 6px; }
    )";
constexpr const char* kStyleOfViews = R"(
        QScrollArea { border: none; background: transparent; }
        QScrollBar:vertical { background: transparent; width: 12px; margin: 2px; }
        QScrollBar::handle:vertical { background: %3; border-radius: 4px; min-height: 28px; }
        QScrollBar::handle:vertical:hover { background: %6; }
        QScrollBar:horizontal { background: transparent; height: 12px; margin: 2px; }
        QScrollBar::handle:horizontal { background: %3; border-radius: 4px; min-width: 28px; }
        QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
        QStatusBar { background: %2; color: %6; border-top: 1px solid %3; }
        QHeaderView { background: transparent; }
        QHeaderView::section { background: %2; color: %6; border: none; padding: 2px 6px; }
        QTableCornerButton::section { background: %2; border: none; }
        QTableView, QListView { background: %2; alternate-background-color: %8; border: none; }
        QLineEdit[quiet="true"], QLineEdit[quiet="true"]:focus, QLineEdit[quiet="true"][problem="true"],
        QComboBox[quiet="true"], QComboBox[quiet="true"]:focus {
            border: none; background: transparent; padding: 0px; }
        QLineEdit[compact="true"] { padding: 2px 3px 2px 1px; }
        QLineEdit[compact="true"]:focus, QLineEdit[compact="true"][problem="true"] { padding: 1px 2px 1px 0px; }
        QLineEdit[nameLike="true"] { border: 1px solid transparent; background: transparent; padding: 2px 3px; }
        QLineEdit[nameLike="true"]:hover { border-color: %3; }
        QLineEdit[nameLike="true"]:focus { border: 2px solid %4; background: %2; padding: 1px 2px; }
        QToolButton[small="true"] { padding: 1px 5px; background: transparent; color: %6; border-color: transparent; }
        QToolButton[small="true"]:hover { color: %1; border-color: %4; }
        QToolButton[small="true"]:focus { padding: 0px 4px; color: %1; border-color: %4; }
        QToolButton[small="true"]:checked { background: %2; color: %1; border-color: %6; }
        QToolButton[small="true"]:checked:focus { border-color: %4; }
        QToolButton[small="true"]:disabled { color: %11; border-color: transparent; }
        QFileDialog QToolButton, QFileDialog QToolButton:focus { padding: 2px; }
        QComboBox { combobox-popup: 0; }
        QComboBox QAbstractItemView { background: %2; color: %1; border: 1px solid %3; padding: 3px; outline: none;
            selection-background-color: %4; selection-color: %9; }
        QComboBox QAbstractItemView::item { padding: 4px 8px; min-height: 20px; }
        QTreeView, QTreeWidget { background: %2; alternate-background-color: %8; border: 1px solid %3; }
        QDialog, QMessageBox { background: %8; }
    )";

/// The little the palette cannot say: rounded fields with a clear focus ring, quiet scroll bars, menus, lists
/// that drop down, tool tips; and fields that are quiet, compact or name-like, by their properties. One sheet
/// for all, which the parts of the windows wear.
QString styleSheetFor(const Theme& theme) {
    return (QString::fromUtf8(kStyleOfFields) + QString::fromUtf8(kStyleOfViews))
        .arg(theme.ink.name(), theme.card.name(), theme.border.name(), theme.focus.name(),
             theme.problem.name(), theme.muted.name(), theme.grid.name(), theme.panel.name(),
             theme.dark ? "#101214" : "#ffffff", theme.starting.name(),
             over(theme.muted, 0.5, theme.card).name()  // there, but not to be pressed
        );
}

}  // namespace

Theme Theme::light() {
    return {.dark = false,
            .window = QColor(0xf1, 0xee, 0xe6),
            .panel = QColor(0xf7, 0xf5, 0xf0),
            .card = QColor(0xff, 0xff, 0xff),
            .canvas = QColor(0xfc, 0xfb, 0xf8),
            .earth = QColor(0xe7, 0xe0, 0xd5),
            .border = QColor(0xd9, 0xd4, 0xc8),
            .grid = QColor(0xeb, 0xe8, 0xe0),
            .ink = QColor(0x1b, 0x1e, 0x21),
            .muted = QColor(0x5b, 0x5f, 0x65),
            .metal = QColor(0x8c, 0x8f, 0x92),
            .metalFill = QColor(0xe9, 0xe8, 0xe3),
            .lower = QColor(0x00, 0x6b, 0xa8),
            .upper = QColor(0xb8, 0x4f, 0x00),
            .crosswise = QColor(0xa0, 0x4a, 0x7b),
            .instantCenter = QColor(0x00, 0x7a, 0x5c),
            .reference = QColor(0x1b, 0x1e, 0x21),
            .focus = QColor(0x00, 0x66, 0xa3),
            .problem = QColor(0xa8, 0x41, 0x00),
            .baseline = QColor(0x6a, 0x6d, 0x73),
            .starting = QColor(0xf8, 0xf1, 0xdf),
            .startingMark = QColor(0x8a, 0x6d, 0x2f)};
}

Theme Theme::darkOne() {
    return {.dark = true,
            .window = QColor(0x17, 0x19, 0x1c),
            .panel = QColor(0x1c, 0x1f, 0x22),
            .card = QColor(0x24, 0x27, 0x2b),
            .canvas = QColor(0x1f, 0x22, 0x25),
            .earth = QColor(0x2c, 0x29, 0x25),
            .border = QColor(0x3d, 0x41, 0x46),
            .grid = QColor(0x2f, 0x33, 0x37),
            .ink = QColor(0xea, 0xea, 0xe6),
            .muted = QColor(0xa6, 0xaa, 0xb0),
            .metal = QColor(0x8a, 0x8f, 0x95),
            .metalFill = QColor(0x31, 0x35, 0x39),
            .lower = QColor(0x56, 0xb4, 0xe9),
            .upper = QColor(0xf0, 0x85, 0x2d),
            .crosswise = QColor(0xd8, 0x92, 0xb8),
            .instantCenter = QColor(0x2f, 0xc8, 0x9c),
            .reference = QColor(0xea, 0xea, 0xe6),
            .focus = QColor(0x56, 0xb4, 0xe9),
            .problem = QColor(0xff, 0x9a, 0x4d),
            .baseline = QColor(0x9a, 0x9e, 0xa4),
            .starting = QColor(0x33, 0x30, 0x26),
            .startingMark = QColor(0xc9, 0xac, 0x6b)};
}

ThemeKeeper& ThemeKeeper::instance() {
    static ThemeKeeper keeper;
    return keeper;
}

ThemeKeeper::ThemeKeeper() : theme_(Theme::light()) {}

void ThemeKeeper::choose(Appearance appearance) {
    static const bool startedDark = QApplication::palette().color(QPalette::Window).lightness() < 128;
    desktopIsDark_ = startedDark;
    appearance_ = appearance;
    const bool dark =
        appearance == Appearance::dark || (appearance == Appearance::followDesktop && desktopIsDark_);
    theme_ = dark ? Theme::darkOne() : Theme::light();
    install();
    emit changed();
}

// Style and font are the same in every theme: set again, they would have every widget measured anew.
void ThemeKeeper::install() {
    if (!installed_) {
        installed_ = true;
        QApplication::setStyle(new CalmStyle);
        QApplication::setFont(applicationFont());
        QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);  // theirs would be another program's
    }
    QApplication::setPalette(paletteFor(theme_));
    Dressing::instance().change(styleSheetFor(theme_));
}

namespace {

QFont madeFont(TextSize size, bool bold) {
    QFont font = QApplication::font();
    const double body = font.pointSizeF();
    switch (size) {
        case TextSize::small:
            font.setPointSizeF(body * 0.88);
            break;
        case TextSize::body:
            break;
        case TextSize::title:
            font.setPointSizeF(body * 1.05);
            break;
        case TextSize::figure:
            font.setPointSizeF(body * 1.75);
            break;
    }
    font.setWeight(bold ? QFont::DemiBold : QFont::Normal);
    return font;
}

}  // namespace

// Kept, as a font made anew has to find its glyphs again. Each thread its own: papers are painted off the
// window's too.
QFont textFont(TextSize size, bool bold) {
    struct Kept {
        QFont from;
        std::array<std::optional<QFont>, 8> made;
    };
    static thread_local Kept kept;
    if (const QFont now = QApplication::font(); !(kept.from == now)) {
        kept = {now, {}};
    }
    std::optional<QFont>& font = kept.made[2 * static_cast<std::size_t>(size) + (bold ? 1 : 0)];
    if (!font) {
        font = madeFont(size, bold);
    }
    return *font;
}

}  // namespace bolthole
