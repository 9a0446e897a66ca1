// The launch in time: what happens between the release and 60 ft, played, drawn and in figures.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "widgets/pages/launch/film_player.h"
#include "widgets/pages/launch/launch_film.h"
#include "widgets/pages/launch/launch_uncertainty_runner.h"
#include "widgets/pages/launch/work_out_dialog.h"
#include "widgets/pages/work_page.h"

namespace bolthole {

class ClickStepper;
class FilmBar;
class LaunchCurves;
class LaunchFiguresCard;
class LaunchMissing;
class LaunchPicture;
class Section;
class ToneLabel;
class TorqueSection;

/// Inputs at left, the played picture with the curves under it, the figures at right. The launch is run
/// whenever the car changes; the uncertainty of its figures comes later, from another thread. What plays
/// stops when the page is hidden. Space plays; arrows, Home and End in picture, track and curves go through
/// the time.
class LaunchPage : public WorkPage {
    Q_OBJECT
  public:
    explicit LaunchPage(QWidget* parent = nullptr);

    /// Puts a widget under the figures.
    void addSide(QWidget* widget);
    /// Shows the launch of a changed car, called `name`, as the ghost in place of the baseline, until the car
    /// on the bench changes.
    void showTried(std::shared_ptr<const Car> car, const QString& name);
    /// Keeps the picture still, or lets it play.
    void keepStill(bool still) { player_.keepStill(still); }

    /// What is shown; null where the car can't be launched. For tests and those who stand beside the page.
    [[nodiscard]] const std::shared_ptr<const LaunchFilm>& film() const { return film_; }
    [[nodiscard]] const std::shared_ptr<const LaunchFilm>& baseline() const { return baseline_; }
    [[nodiscard]] FilmPlayer& player() { return player_; }
    [[nodiscard]] LaunchPicture& picture() { return *picture_; }
    [[nodiscard]] LaunchCurves& curves() { return *curves_; }
    [[nodiscard]] LaunchFiguresCard& figures() { return *figures_; }
    [[nodiscard]] FilmBar& bar() { return *bar_; }
    /// Whether the figures' ± are still to come.
    [[nodiscard]] bool isDrawing() const { return uncertainties_.isRunning(); }

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope) const override { return true; }
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    // launch_page.cpp
    void buildBody();
    [[nodiscard]] QWidget* buildMiddle();
    [[nodiscard]] QWidget* buildSide();
    void connectParts();
    void runFilms();
    void showFilms();
    void showUncertainties();
    void showNothing(const QString& why);
    void showTime();
    bool goByKey(int key);

    // launch_sections.cpp
    [[nodiscard]] Section* clickSection(QWidget* parent);
    [[nodiscard]] Section* releaseSection(QWidget* parent);
    [[nodiscard]] Section* engineSection(QWidget* parent);
    [[nodiscard]] Section* drivelineSection(QWidget* parent);
    [[nodiscard]] Section* frontSection(QWidget* parent);
    [[nodiscard]] Section* massSection(QWidget* parent);
    [[nodiscard]] Section* rateSection(QWidget* parent);
    [[nodiscard]] Section* pressureSection(QWidget* parent);
    [[nodiscard]] Section* tireSection(QWidget* parent);
    void addRow(Section& section, Field field, const QString& whenEmpty);
    void addWorkOut(Section& section, Field field, const QString& name, std::function<WorkOut()> task);
    [[nodiscard]] ReadWith readWith() const;
    [[nodiscard]] WorkOut tireRateTask(const QString& name) const;
    [[nodiscard]] WorkOut wheelInertiaTask(const QString& name) const;
    void addForces(Section& section, int item, const QString& whose);
    void addClicks(Section& section, const FieldId& bump, const FieldId& rebound, const QString& name);
    void letFold(Section& section, std::size_t index, const std::vector<Field>& fields);
    void showSections();
    void enterTorque();
    void enterCoupling();

    // A section that is folded until it is asked for.
    struct Folded {
        Section* section = nullptr;
        std::vector<Field> fields;
    };
    static constexpr std::size_t kFoldedSections = 4;

    // A changed car whose launch is to be seen, and the car it was a change of.
    struct Tried {
        std::shared_ptr<const Car> car{};
        QString name{};
        Car of{};
    };

    FilmPlayer player_;
    Tried tried_{};
    LaunchUncertaintyRunner uncertainties_;
    LaunchSimulator simulator_;
    std::shared_ptr<const LaunchFilm> film_;
    std::shared_ptr<const LaunchFilm> baseline_;
    double shownEnd_ = 0;  // of the film, s
    // What was drawn last, and of which films: shown again it is not drawn again.
    std::optional<LaunchUncertainties> drawn_;
    std::shared_ptr<const LaunchFilm> drawnFilm_;
    std::shared_ptr<const LaunchFilm> drawnBaseline_;
    ToneLabel* problem_;
    LaunchMissing* missing_;
    QWidget* body_;
    ToneLabel* ended_ = nullptr;
    LaunchPicture* picture_ = nullptr;
    FilmBar* bar_ = nullptr;
    LaunchCurves* curves_ = nullptr;
    LaunchFiguresCard* figures_ = nullptr;
    QVBoxLayout* side_ = nullptr;
    int sideWidgets_ = 0;
    std::vector<ClickStepper*> clicks_;
    QWidget* coupling_ = nullptr;  // the row to choose converter or clutch
    TorqueSection* torque_ = nullptr;
    std::array<Folded, kFoldedSections> folded_;
    std::array<bool, kFoldedSections> unfolded_{};  // as the person left them, while fields are built anew
    bool showsRows_ = false;                        // of the torque curve, the same
};

}  // namespace bolthole
