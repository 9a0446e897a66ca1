// The brackets' plates: entered at left, drawn to scale at right, printed at true size.
#pragma once

#include <optional>

#include "widgets/pages/work_page.h"
#include "widgets/papers/howto/how_to_picture.h"
#include "widgets/papers/template_scene.h"

class QAbstractButton;

namespace bolthole {

class BracketPicture;
class CalmCombo;
class Card;
class FactCard;
class PlateSection;
class ToneLabel;

/// One bracket at a time: its plate, its holes, and which of the plate's rules they break.
class BracketPage : public WorkPage {
    Q_OBJECT
  public:
    explicit BracketPage(QWidget* parent = nullptr);

    /// The bracket shown: the one chosen, at first one with a plate; nothing where the car has no links.
    [[nodiscard]] std::optional<BracketId> place() const;
    /// Shows another one.
    void choose(const BracketId& place);
    [[nodiscard]] BracketPicture& picture() const { return *picture_; }

  signals:
    void templatePreviewRequested();
    void templateFileRequested();
    /// How a number of the plate is measured is asked for in its field.
    void plateHowToRequested(bolthole::PlateNumber number, const QString& name, const QString& howTo);

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope scope) const override { return scope == Scope::hole; }

  private:
    [[nodiscard]] std::optional<BracketId> placeIn(const Car& car) const;
    [[nodiscard]] const Bracket& bracket() const;
    void addChooser(QWidget* content, QVBoxLayout* column);
    void addPlate(QWidget* content, QVBoxLayout* column);
    void addHoles(QWidget* content, QVBoxLayout* column);
    void addHole(QWidget* parent, QVBoxLayout* column, int hole);
    void buildPicture();
    void enterRectangle();
    void planHole();
    void ask(const std::optional<Plate>& plate);
    void showNotes();

    std::optional<BracketId> chosen_;
    int from_ = -1;           // the hole corners are measured from
    bool fromUse_ = true;     // nobody chose another: the one in use
    int cornerToEnter_ = -1;  // once the fields are built anew
    PlateSection* plate_ = nullptr;
    ToneLabel* unmeasured_ = nullptr;
    ToneLabel* empty_ = nullptr;
    Card* card_ = nullptr;
    ToneLabel* title_ = nullptr;
    BracketPicture* picture_ = nullptr;
    FactCard* facts_ = nullptr;
};

}  // namespace bolthole
