// Help in the program: what the bench does, how to measure with pictures of the car at hand, the words on
// screen, the keys, what is computed. Needs no network; the texts are the files of resources/help.
#pragma once

#include <QDialog>
#include <QVariant>
#include <vector>

#include "widgets/papers/sheets/measuring_plan.h"

class QLineEdit;
class QTabBar;
class QTextBrowser;

namespace bolthole {

class ToneLabel;

/// What there is to read, in the order of the tabs.
enum class HelpTopic { bench, measuring, words, keys, computed };

/// A window of its own that blocks nothing. What is searched is looked for from where one is, through all
/// topics and around; Ctrl+F enters the search, Enter and F3 go to the next place, Shift+F3 to the one
/// before.
class HelpWindow : public QDialog {
    Q_OBJECT
  public:
    /// `pages`: what the window's tabs are called and their keys, said among the keys.
    HelpWindow(const QString& pages, QWidget* parent = nullptr);

    /// Opens a topic, pictures drawn of `car`, which must have passed findFaults().
    void showTopic(HelpTopic topic, const Car& car);
    /// Goes to the next place, or the one before, where the words searched stand. False: nowhere, and that is
    /// said.
    bool find(bool back = false);

  private:
    void read(int topic);
    [[nodiscard]] QString textOf(int topic) const;
    [[nodiscard]] QString pictures() const;
    [[nodiscard]] QVariant picture(const QString& name) const;

    QString pages_;
    Car car_;
    std::vector<PlanArea> areas_;
    QTabBar* topics_;
    QLineEdit* search_;
    ToneLabel* found_;
    QTextBrowser* text_;
};

}  // namespace bolthole
