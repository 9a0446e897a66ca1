// For everybody: what a screen reader is told on every page, and words that can all be translated.
#include <gmock/gmock.h>

#include <QAbstractButton>
#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QRegularExpression>
#include <QTabBar>
#include <QTest>
#include <QTranslator>
#include <algorithm>
#include <functional>
#include <set>
#include <string>

#include "app/window/main_window.h"

namespace bolthole {
namespace {

const QString kDemo = QStringLiteral("long-roof-wagon.bolt.json");

/// Opens the demo and looks at every page in turn.
void onEveryPage(MainWindow& window, const std::function<void(const std::string& page)>& look) {
    window.resize(1480, 920);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    window.openDemo(kDemo);
    auto* tabs = window.findChild<QTabBar*>(QStringLiteral("workPages"));
    ASSERT_NE(tabs, nullptr);
    ASSERT_GE(tabs->count(), 9);
    for (int page = 0; page < tabs->count(); ++page) {
        tabs->setCurrentIndex(page);
        QCoreApplication::processEvents();
        look(tabs->tabText(page).toStdString());
    }
}

std::string whereOf(const QWidget& widget) {
    std::string path;
    for (const QWidget* each = &widget; each != nullptr; each = each->parentWidget()) {
        path += std::string(each->metaObject()->className()) + ' ';
    }
    return path;
}

TEST(Everybody, EveryFocusableWidgetHasNameAndRole) {
    MainWindow window{Settings{}};
    int seen = 0;
    onEveryPage(window, [&](const std::string& page) {
        for (QWidget* widget : window.findChildren<QWidget*>()) {
            if (!widget->isVisible() || widget->focusPolicy() == Qt::NoFocus || !widget->isEnabled()) {
                continue;
            }
            ++seen;
            QAccessibleInterface* told = QAccessible::queryAccessibleInterface(widget);
            ASSERT_NE(told, nullptr) << page << ": " << whereOf(*widget);
            EXPECT_FALSE(told->text(QAccessible::Name).isEmpty()) << page << ": " << whereOf(*widget);
            EXPECT_NE(told->role(), QAccessible::NoRole) << page << ": " << whereOf(*widget);
        }
    });
    EXPECT_GT(seen, 200);
}

/// Translates every text into itself, longer by 40 percent and more, with accents, between marks.
class Lengthening : public QTranslator {
  public:
    static constexpr QChar kOpening = u'⟦';
    static constexpr QChar kClosing = u'⟧';

    [[nodiscard]] QString translate(const char* /*context*/, const char* source, const char* /*remark*/,
                                    int /*count*/) const override {
        QString text = QString::fromUtf8(source);
        const qsizetype more = (2 * text.size() + 4) / 5;
        text.replace(u'a', u'á').replace(u'e', u'é').replace(u'o', u'ö');
        return kOpening + text + QString(more, u'~') + kClosing;
    }
    [[nodiscard]] bool isEmpty() const override { return false; }
};

/// Words that are the car's own, or the same in every language: numbers, units, names of files and of holes.
bool needsNoTranslation(const QString& text, const MainWindow& window) {
    // No letters but those of units.
    static const QRegularExpression kUnitOrNumber(QStringLiteral(
        "^[^\\p{L}]*((in|mm|lb|kg|deg|rpm|lb-ft|N·m|g|s|psi|kPa|lb/in|N/mm|lb-ft/°|lb·ft²|kg·m²|in/s|mm/s|N|"
        "m|ft|mph|km/h|°F|°C)(?!\\p{L})[^\\p{L}]*)*$"));
    if (kUnitOrNumber.match(text).hasMatch() || text == kDemo) {
        return true;
    }
    // Names of demo cars, letters of setups.
    static const QRegularExpression kOthers(QStringLiteral(
        "^([A-Z]|gal|lb/gal|Gully roadster|Light coupe|Long roof wagon|Notch sedan|Short pickup)$"));
    if (kOthers.match(text).hasMatch()) {
        return true;
    }
    const Car& car = window.state().car;
    const std::string words = text.toStdString();
    const auto names = [&](const Bracket& bracket) {
        return std::ranges::any_of(bracket.holes, [&](const Hole& hole) { return hole.name == words; });
    };
    return words == car.title || std::ranges::any_of(car.links, [&](const Link& link) {
               return link.name == words || names(link.chassis) || names(link.axle);
           });
}

TEST(Everybody, EveryWordOfMenusButtonsTabsAndLabelsCanBeTranslated) {
    Lengthening translator;
    QCoreApplication::installTranslator(&translator);
    {
        MainWindow window{Settings{}};
        std::set<std::string> hardWired;
        int seen = 0;
        const auto take = [&](const QString& text) {
            ++seen;
            if (!text.isEmpty() && !text.contains(Lengthening::kOpening) &&
                !needsNoTranslation(text, window)) {
                hardWired.insert(text.toStdString());
            }
        };
        onEveryPage(window, [&](const std::string& /*page*/) {
            for (const QAction* action : window.findChildren<QAction*>()) {
                take(action->text());
            }
            for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
                take(button->text());
            }
            for (const QLabel* label : window.findChildren<QLabel*>()) {
                take(label->text());
            }
            for (const QTabBar* tabs : window.findChildren<QTabBar*>()) {
                for (int tab = 0; tab < tabs->count(); ++tab) {
                    take(tabs->tabText(tab));
                }
            }
        });
        EXPECT_GT(seen, 1000);
        EXPECT_THAT(hardWired, testing::IsEmpty());
    }
    QCoreApplication::removeTranslator(&translator);
}

// What the bottom floor says, which knows no toolkit: warnings, why an edit was refused, what it would be
// called.
TEST(Everybody, WarningsRefusalsAndEditsComeTranslated) {
    Lengthening translator;
    QCoreApplication::installTranslator(&translator);
    {
        MainWindow window{Settings{}};
        window.openDemo(kDemo);
        const auto translated = [](const std::string& text) {
            return QString::fromStdString(text).startsWith(Lengthening::kOpening);
        };
        const auto change = [&](const FieldId& id, double value) {
            return window.document().apply(SetNumber{id, value}, EditPhase::whole, {});
        };
        EXPECT_EQ(change({.field = Field::cgHeight}, 1.3), QString());
        EXPECT_EQ(change({.field = Field::linkLength, .link = 0}, 0.9), QString());
        EXPECT_EQ(change({.field = Field::leftFrontWeight}, 900), QString());
        EXPECT_GE(window.state().warnings.size(), 4U);
        for (const Warning& warning : window.state().warnings) {
            EXPECT_TRUE(translated(warning.finding.cause)) << warning.finding.cause;
            EXPECT_TRUE(warning.finding.follows.empty() || translated(warning.finding.follows))
                << warning.finding.follows;
        }
        EXPECT_TRUE(change({.field = Field::wheelbase}, -1).startsWith(Lengthening::kOpening));
        EXPECT_TRUE(window.document().undoStack().undoText().startsWith(Lengthening::kOpening))
            << window.document().undoStack().undoText().toStdString();
    }
    QCoreApplication::removeTranslator(&translator);
}

// Longer words make labels wrap or fields move; nothing may be cut off without an ellipsis the person can
// see.
TEST(Everybody, ButtonsAndTabsHaveRoomForLongerWords) {
    Lengthening translator;
    QCoreApplication::installTranslator(&translator);
    {
        MainWindow window{Settings{}};
        onEveryPage(window, [&](const std::string& page) {
            for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
                if (button->isVisible() && !button->text().isEmpty()) {
                    EXPECT_GE(button->width() + 1, button->minimumSizeHint().width())
                        << page << ": " << button->text().toStdString();
                }
            }
        });
    }
    QCoreApplication::removeTranslator(&translator);
}

// What of a window's labels and buttons is narrower than its words, which neither wrap nor end in an
// ellipsis.
std::set<std::string> cutIn(const MainWindow& window, int& seen) {
    std::set<std::string> cut;
    for (const QLabel* label : window.findChildren<QLabel*>()) {
        const bool isPlain = label->textFormat() == Qt::PlainText && !label->wordWrap();
        if (!label->isVisible() || !isPlain || label->text().isEmpty()) {
            continue;
        }
        ++seen;
        if (label->contentsRect().width() + 1 < label->fontMetrics().horizontalAdvance(label->text()) ||
            label->contentsRect().height() + 1 < label->fontMetrics().ascent()) {
            cut.insert(label->text().toStdString());
        }
    }
    for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
        if (button->isVisible() && !button->text().isEmpty() &&
            button->width() + 1 < button->minimumSizeHint().width()) {
            cut.insert(button->text().toStdString());
        }
    }
    return cut;
}

// In a window as small as a laptop's. Run at other scales too, see tests/CMakeLists.txt.
TEST(Everybody, NoWordIsCut) {
    constexpr int kDelay = 2000;  // ms in which rows find their place after the window has its size
    MainWindow window{Settings{}};
    int seen = 0;
    onEveryPage(window, [&](const std::string& page) {
        window.resize(1280, 780);
        std::set<std::string> cut;
        EXPECT_TRUE(QTest::qWaitFor(
            [&] {
                cut = cutIn(window, seen);
                return cut.empty();
            },
            kDelay))
            << page << ": " << testing::PrintToString(cut);
    });
    EXPECT_GT(seen, 200);
}

// Fields, buttons and labels that a layout placed over each other, or past their parent's side.
std::set<std::string> misplacedIn(const MainWindow& window, int& seen) {
    std::set<std::string> misplaced;
    for (const QWidget* parent : window.findChildren<QWidget*>()) {
        if (!parent->isVisible() || parent->layout() == nullptr) {
            continue;
        }
        QList<const QWidget*> placed;
        for (const QWidget* child : parent->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
            const bool isShown = qobject_cast<const QLabel*>(child) != nullptr ||
                                 qobject_cast<const QAbstractButton*>(child) != nullptr ||
                                 qobject_cast<const QLineEdit*>(child) != nullptr;
            if (isShown && child->isVisible() && parent->layout()->indexOf(child) >= 0) {
                placed << child;
            }
        }
        for (qsizetype one = 0; one < placed.size(); ++one) {
            ++seen;
            const QRect at = placed[one]->geometry();
            if (at.left() < 0 || at.right() >= parent->width()) {
                misplaced.insert("past its side: " + whereOf(*placed[one]));
            }
            for (qsizetype other = 0; other < one; ++other) {
                if (at.intersects(placed[other]->geometry())) {
                    misplaced.insert("over another: " + whereOf(*placed[one]));
                }
            }
        }
    }
    return misplaced;
}

// Where one reads from right to left the sheet and the pages stand mirrored, and whole.
TEST(Everybody, RightToLeftLosesNothing) {
    QGuiApplication::setLayoutDirection(Qt::RightToLeft);
    {
        MainWindow window{Settings{}};
        int seen = 0;
        onEveryPage(window, [&](const std::string& page) {
            EXPECT_TRUE(window.isRightToLeft());
            std::set<std::string> wrong;
            EXPECT_TRUE(QTest::qWaitFor(
                [&] {
                    wrong = misplacedIn(window, seen);
                    wrong.merge(cutIn(window, seen));
                    return wrong.empty();
                },
                2000))
                << page << ": " << testing::PrintToString(wrong);
        });
        EXPECT_GT(seen, 500);
    }
    QGuiApplication::setLayoutDirection(Qt::LeftToRight);
}

}  // namespace
}  // namespace bolthole
