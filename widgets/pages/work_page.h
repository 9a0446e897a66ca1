// A page beside the bench: fields at left, what follows from them at right.
#pragma once

#include <QWidget>
#include <functional>
#include <string>
#include <vector>

#include "geometry/car/fields.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/state/bench_state.h"

class QScrollArea;
class QVBoxLayout;

namespace bolthole {

class CalmCombo;
class Section;
class ToneLabel;

/// What all pages share: their fields live in a hub of their own and are built anew only where the parts they
/// stand for came or went; a hidden page computes nothing. A page says what belongs in it by the three
/// functions at its end.
class WorkPage : public QWidget {
    Q_OBJECT
  public:
    /// `title`: what the page is called, also for screen readers.
    explicit WorkPage(const QString& title, QWidget* parent = nullptr);

    [[nodiscard]] const QString& title() const { return title_; }
    /// Shows `state`, which is read in place from then on and must outlive the page.
    void showState(const BenchState& state);
    /// Whether the number has a field here.
    [[nodiscard]] virtual bool hasField(const FieldId& id) const { return hub_->editor(id) != nullptr; }
    /// Unfolds the group of a number, scrolls to its field and enters it.
    virtual void focusField(const FieldId& id);
    /// Enters the page's first field.
    void enter();
    /// Takes or drops what is still being typed.
    void commitPending();
    void discardTyping();

  signals:
    void edited(const Edit& edit);           ///< a whole change
    void fieldRequested(const FieldId& id);  ///< a number that stands on another page is to be entered
    void howToRequested(const FieldId& id);  ///< how to measure it is asked for in its field

  protected:
    [[nodiscard]] SheetHub& hub() const { return *hub_; }
    /// Whether the page was shown a state yet.
    [[nodiscard]] bool hasState() const { return hub_->hasState(); }
    /// `show`, for what was computed aside of the car shown now: does nothing where the page is to show
    /// another by then, which brings its own.
    [[nodiscard]] std::function<void()> whileCurrent(std::function<void()> show) const;
    [[nodiscard]] const BenchState& state() const { return hub_->state(); }
    /// Says in a label why the figures are not of the car as it stands, after what the page has to say; hides
    /// it where there is nothing.
    void sayWhatIsWrong(ToneLabel& label, QStringList said) const;
    /// Where what follows from the fields belongs; filled once by the page's constructor.
    [[nodiscard]] QVBoxLayout* results() const { return results_; }
    /// A row for one number with its words, which may be left empty where the car file lets it.
    [[nodiscard]] QWidget* row(const FieldId& id, const QString& whenEmpty, QWidget* parent);
    /// A row for a word that is one of several, in the order of its enumerators.
    [[nodiscard]] QWidget* choiceRow(Choice choice, const QString& label, const QStringList& options,
                                     const QString& toolTip, QWidget* parent);
    void showEvent(QShowEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

    /// What decides which fields there are, in any spelling: where it differs the fields are built anew.
    [[nodiscard]] virtual std::string shapeOf(const Car& car) const = 0;
    /// Puts sections with fields into the column of `content`.
    virtual void fill(QWidget* content, QVBoxLayout* column) = 0;
    /// Computes and shows what follows from the numbers; called only while the page is seen.
    virtual void refresh() = 0;
    /// Whether what stands on the page rests on numbers of this scope, for what it says of those that nobody
    /// measured. By default all but the springs'.
    [[nodiscard]] virtual bool restsOn(Scope scope) const {
        return scope != Scope::spring && scope != Scope::mount;
    }

  private:
    void rebuild(const std::string& shape);
    void retire();
    void refreshIfSeen();

    struct ChoiceBox {
        Choice choice;
        CalmCombo* box;
    };
    void showCombinations();

    QString title_;
    std::vector<ChoiceBox> choices_;
    SheetHub* hub_;
    QScrollArea* scroll_;
    QVBoxLayout* results_;
    ToneLabel* starts_;  // what of the car nobody measured, above everything that follows from it
    std::string shape_;
    bool built_ = false;
    bool stale_ = true;  // what follows from the numbers is not shown yet
};

}  // namespace bolthole
