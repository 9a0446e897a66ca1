// Working backwards: what is wanted, and what to bolt, drill or turn to get it.
#pragma once

#include <memory>

#include "geometry/search/wanted_search.h"
#include "widgets/pages/work_page.h"

class QCheckBox;
class QProgressBar;

namespace bolthole {

class AnswerCard;
class Section;
class ToneLabel;

/// A window to begin with: around what the car has now, in round numbers. `ride`: the car at ride; not
/// usable: a window that asks for little.
[[nodiscard]] WantedWindow firstWindow(const Station& ride, Units units);

/// Left what is wanted, right the answers. Computes nothing: it asks for a search and is shown what came of
/// it.
class WantedPage : public WorkPage {
    Q_OBJECT
  public:
    explicit WantedPage(QWidget* parent = nullptr);
    ~WantedPage() override;

    /// What happens to the rods' lengths, as chosen here or as suits the car.
    [[nodiscard]] LengthTreatment lengths() const;
    /// The answers and the car they are for; null while they are looked for.
    void showAnswers(const std::shared_ptr<const WantedAnswers>& answers,
                     const std::shared_ptr<const Car>& car);
    /// How far the search is, 0 to 1.
    void showProgress(double share);
    /// Whether the wanted instant center can be dragged in the side view.
    void showInPicture(bool on);
    /// For tests.
    [[nodiscard]] const AnswerCard& meeting() const { return *meeting_; }
    [[nodiscard]] const AnswerCard& nearest() const { return *nearest_; }
    [[nodiscard]] const AnswerCard& holes() const { return *holes_; }
    [[nodiscard]] const AnswerCard& rods() const { return *rods_; }

  signals:
    /// The page is seen and the car, what is wanted, or the lengths may have changed.
    void searchWanted();
    void inPictureChosen(bool on);

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
    void chooseLengths(int index);
    void showMessage();
    void showCards();
    void wantSomething();

    std::shared_ptr<const WantedAnswers> answers_;
    std::shared_ptr<const Car> answeredCar_;
    std::optional<LengthTreatment> chosen_;
    bool inPicture_ = false;
    QCheckBox* inPictureBox_ = nullptr;
    ToneLabel* message_;
    ToneLabel* empty_;
    QProgressBar* progress_;
    AnswerCard* meeting_;
    AnswerCard* nearest_;
    AnswerCard* holes_;
    AnswerCard* rods_;
};

}  // namespace bolthole
