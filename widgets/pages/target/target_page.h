// The target, and what to bolt, drill or turn to get it.
#pragma once

#include <memory>

#include "geometry/search/target_search.h"
#include "widgets/pages/work_page.h"

class QCheckBox;
class QComboBox;
class QProgressBar;

namespace bolthole {

class AnswerCard;
class Section;
class ToneLabel;

/// A window to begin with: around what the car has now, in round numbers. `ride`: the car at ride; not
/// usable: a window that asks for little.
[[nodiscard]] TargetWindow firstWindow(const Station& ride, Units units);

/// Left the target, right the answers. Computes nothing: it asks for a search and is shown what came of
/// it.
class TargetPage : public WorkPage {
    Q_OBJECT
  public:
    explicit TargetPage(QWidget* parent = nullptr);
    ~TargetPage() override;

    /// What happens to the links' lengths, as chosen on any page or as suits the car.
    [[nodiscard]] LengthTreatment lengths() const;
    /// The answers and the car they are for; null while they are looked for.
    void showAnswers(const std::shared_ptr<const TargetAnswers>& answers,
                     const std::shared_ptr<const Car>& car);
    /// How far the search is, 0 to 1.
    void showProgress(double share);
    /// Whether the target instant center can be dragged in the side view.
    void showInPicture(bool on);
    /// For tests.
    [[nodiscard]] const AnswerCard& meeting() const { return *meeting_; }
    [[nodiscard]] const AnswerCard& nearest() const { return *nearest_; }
    [[nodiscard]] const AnswerCard& holes() const { return *holes_; }
    [[nodiscard]] const AnswerCard& rods() const { return *rods_; }

  signals:
    /// The page is seen and the car, the target, or the lengths may have changed.
    void searchRequested();
    void inPictureChosen(bool on);
    void lengthsChosen(bolthole::LengthTreatment lengths);

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;

  private:
    [[nodiscard]] Section* emptySection(QWidget* parent);
    [[nodiscard]] Section* fieldSection(const QString& title, std::initializer_list<Field> fields,
                                        QWidget* parent);
    [[nodiscard]] Section* searchSection(QWidget* parent);
    [[nodiscard]] QWidget* clearButton(QWidget* parent);
    [[nodiscard]] QWidget* note(QWidget* parent) const;
    [[nodiscard]] QWidget* lengthsBox(QWidget* parent);
    void showLengths();
    void showMessage();
    void showCards();
    void wantSomething();

    std::shared_ptr<const TargetAnswers> answers_;
    std::shared_ptr<const Car> answeredCar_;
    bool inPicture_ = false;
    QCheckBox* inPictureBox_ = nullptr;
    QComboBox* lengthsBox_ = nullptr;
    ToneLabel* message_;
    ToneLabel* empty_;
    QProgressBar* progress_;
    AnswerCard* meeting_;
    AnswerCard* nearest_;
    AnswerCard* holes_;
    AnswerCard* rods_;
};

}  // namespace bolthole
