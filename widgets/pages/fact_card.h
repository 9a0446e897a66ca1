// A card of computed figures: a title, rows of label, value and remark, and what has to be said under them.
#pragma once

#include <QString>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/card.h"
#include "widgets/kit/sheet_parts.h"

class QGridLayout;
class QVBoxLayout;

namespace bolthole {

/// A number a row shows, so that its uncertainty can be computed and others can be told of it. Signed, where
/// the row shows a size and says the sign in words.
struct FactNumber {
    /// Which number of its page it is, whatever the row is called: "front_joint_ride". No two numbers of a
    /// page have the same one; empty: the row shows no number.
    std::string id{};
    double value = std::numeric_limits<double>::quiet_NaN();  ///< SI; NaN: the row shows none
    Quantity quantity = Quantity::length;
    Fineness fineness = Fineness::plain;  ///< how it is written
    QString unit{};                       ///< where its unit is not the quantity's: "g"
    /// A size that can't be below nothing, as an angle between two shafts: near nothing its uncertainty is
    /// told by where it may be, "0.05 to 1.38°", as it lies on no middle.
    bool hasNoSign = false;
    /// Its own standard uncertainty, SI, where it comes from no number of the car, as a published mean does.
    std::optional<double> ownUncertainty{};
};

/// The same number as a size without a sign.
[[nodiscard]] inline FactNumber sizeOf(FactNumber number) {
    number.hasNoSign = true;
    return number;
}

/// A number that figureText() or fineFigureText() writes, SI.
[[nodiscard]] inline FactNumber plainNumber(std::string id, double value, Quantity quantity) {
    return {
        .id = std::move(id), .value = value, .quantity = quantity, .fineness = Fineness::plain, .unit = {}};
}
[[nodiscard]] inline FactNumber fineNumber(std::string id, double value, Quantity quantity) {
    return {
        .id = std::move(id), .value = value, .quantity = quantity, .fineness = Fineness::fine, .unit = {}};
}

/// A name in small letters and digits, everything else an underscore between them, for ids: "Left coil-over"
/// gives "left_coil_over". Letters beyond ASCII stay as they are.
[[nodiscard]] std::string snakeCase(std::string_view name);

/// One row of a FactCard.
struct Fact {
    QString label;
    QString value;           ///< with its unit; an em dash where it is not known
    QString remark;          ///< how it comes about or why it is not known; may be empty
    bool isProblem = false;  ///< value and remark say that something is wrong
    FactNumber number{};
    QString
        plusMinus{};  ///< "± 4 lb"; empty where it is not known, not to be seen, or the row shows no number
    std::vector<FactNumber> others{};  ///< more numbers it shows, without a ± of their own on screen
    QString starting{};  ///< "starting numbers: CG height" where it rests on such, and so has no ±
};

/// A figure; one that rests on starting numbers has dots under it, as the fields of those have, and its tip
/// names them.
class FigureLabel : public ToneLabel {
    Q_OBJECT
  public:
    using ToneLabel::ToneLabel;
    void showStarting(const QString& words);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    bool starting_ = false;
};

/// Shows facts under a title; a row with an empty value is a heading within the card. Rebuilds nothing while
/// the number of rows stays.
class FactCard : public Card {
    Q_OBJECT
  public:
    explicit FactCard(const QString& title, QWidget* parent = nullptr);

    /// Shows the rows, and `note` under them where it is not empty.
    void showFacts(const std::vector<Fact>& facts, const QString& note = QString());
    /// Room under the title for a picture or table of the page's own, above the rows.
    void addAbove(QWidget* widget);

  private:
    struct Row {
        ToneLabel* label;
        FigureLabel* value;
        FigureLabel* badValue;
        ToneLabel* remark;
        ToneLabel* badRemark;
    };
    void addRow();
    static void showRow(const Row& row, const Fact& fact);

    QVBoxLayout* column_;
    QGridLayout* grid_;
    std::vector<Row> rows_;
    ToneLabel* note_;
};

}  // namespace bolthole
