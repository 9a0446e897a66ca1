#include "widgets/pages/brackets/bracket_page.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "geometry/plates/plate_room.h"
#include "widgets/fields/hole_grid.h"
#include "widgets/kit/card.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/brackets/bracket_facts.h"
#include "widgets/pages/brackets/bracket_picture.h"
#include "widgets/pages/brackets/plate_section.h"
#include "widgets/pages/fact_card.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

ToneLabel* wrappingWords(ToneLabel::Tone tone, const QString& text, QWidget* parent) {
    auto* words = new ToneLabel(tone, text, parent);
    words->setWordWrap(true);
    words->setContentsMargins(4, 0, 4, 0);
    return words;
}

/// The first bracket whose plate is entered, or the first there is.
BracketId firstWithPlate(const Car& car) {
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            if (car.links[link].bracket(end).plate) {
                return {static_cast<int>(link), end};
            }
        }
    }
    return {};
}

}  // namespace

BracketPage::BracketPage(QWidget* parent) : WorkPage(tr("Brackets"), parent) {
    empty_ =
        wrappingWords(ToneLabel::Tone::muted,
                      tr("The car has no links, so no brackets yet. Add a link on the Links page."), this);
    results()->addWidget(empty_);
    buildPicture();
    facts_ = new FactCard(tr("Room around each hole"), this);
    results()->addWidget(facts_);
    results()->addStretch(1);
}

void BracketPage::buildPicture() {
    card_ = new Card(this);
    auto* column = new QVBoxLayout(card_);
    column->setContentsMargins(Card::kInset, 6, Card::kInset, Card::kInset);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(10, 0, 6, 0);
    title_ = new ToneLabel(ToneLabel::Tone::plain, QString(), card_);
    title_->setFont(textFont(TextSize::title, true));
    row->addWidget(title_, 1);
    QAbstractButton* preview =
        smallButton(tr("Drilling template…"), tr("Drilling template preview"),
                    tr("This bracket at true size on paper, from either side, with rulers to check the "
                       "printer. Shown before it is printed."),
                    card_);
    QAbstractButton* save = smallButton(tr("Save as PDF…"), tr("Save drilling template as PDF"),
                                        tr("The drilling template as a PDF file."), card_);
    connect(preview, &QAbstractButton::clicked, this, &BracketPage::templatePreviewRequested);
    connect(save, &QAbstractButton::clicked, this, &BracketPage::templateFileRequested);
    row->addWidget(preview);
    row->addWidget(save);
    column->addLayout(row);
    picture_ = new BracketPicture(card_);
    picture_->setMinimumHeight(400);
    column->addWidget(picture_);
    connect(picture_, &BracketPicture::plateRequested, this, [this](const Plate& plate) { ask(plate); });
    results()->addWidget(card_);
}

std::optional<BracketId> BracketPage::placeIn(const Car& car) const {
    if (car.links.empty()) {
        return std::nullopt;
    }
    const int last = static_cast<int>(car.links.size()) - 1;
    const BracketId wanted = chosen_ ? *chosen_ : firstWithPlate(car);
    return BracketId{std::min(wanted.link, last), wanted.end};
}

std::optional<BracketId> BracketPage::place() const {
    return hasState() ? placeIn(state().car) : std::nullopt;
}

const Bracket& BracketPage::bracket() const {
    const BracketId at = *placeIn(state().car);
    return state().car.links[static_cast<std::size_t>(at.link)].bracket(at.end);
}

void BracketPage::choose(const BracketId& place) {
    chosen_ = place;
    fromUse_ = true;
    showState(state());
}

// Which bracket, how many corners, and the holes with their names and whether they are planned.
std::string BracketPage::shapeOf(const Car& car) const {
    const std::optional<BracketId> at = placeIn(car);
    if (!at) {
        return "none";
    }
    std::string shape = std::to_string(at->link) + (at->end == End::axle ? "a" : "c");
    for (const Link& link : car.links) {
        shape += link.name + '\n';
    }
    const Bracket& there = car.links[static_cast<std::size_t>(at->link)].bracket(at->end);
    shape += there.plate ? std::to_string(there.plate->corners.size()) : "-";
    for (const Hole& hole : there.holes) {
        shape += hole.name + (hole.planned ? "\np" : "\nd");
    }
    return shape + std::to_string(there.use) + (fromUse_ ? "u" : std::to_string(from_));
}

void BracketPage::fill(QWidget* content, QVBoxLayout* column) {
    plate_ = nullptr;
    unmeasured_ = nullptr;
    column->addWidget(wrappingWords(
        ToneLabel::Tone::muted,
        tr("▲ Whether a bracket bears another hole is for a qualified person. This page only keeps to the "
           "distances entered here. Car on rated stands, wheels chocked, before anything is drilled."),
        content));
    if (!placeIn(state().car)) {
        return;
    }
    addChooser(content, column);
    addPlate(content, column);
    addHoles(content, column);
}

void BracketPage::addChooser(QWidget* content, QVBoxLayout* column) {
    auto* choice = new CalmCombo(content);
    choice->setAccessibleName(tr("Bracket"));
    choice->setObjectName(QStringLiteral("bracketChoice"));
    choice->setToolTip(wrappedToolTip(tr("Every link has a bracket on the chassis and one on the axle.")));
    for (int link = 0; link < static_cast<int>(state().car.links.size()); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            choice->addItem(bracketWords(state().car, {link, end}));
        }
    }
    const BracketId at = *placeIn(state().car);
    choice->setCurrentIndex(2 * at.link + (at.end == End::axle ? 1 : 0));
    connect(choice, &QComboBox::activated, this, [this](int index) {
        choose({index / 2, index % 2 == 0 ? End::chassis : End::axle});
    });
    column->addWidget(new BoxRow(tr("Bracket"), choice, content));
}

void BracketPage::addPlate(QWidget* content, QVBoxLayout* column) {
    if (!bracket().plate) {
        column->addWidget(wrappingWords(
            ToneLabel::Tone::muted,
            tr("No plate entered for this bracket. With its outline the page tells how far each hole is from "
               "the edge, and the template shows where to lay it. Begin with a rectangle around the holes, "
               "then measure over every number."),
            content));
        auto* begin = new QPushButton(tr("Rectangle around the holes"), content);
        connect(begin, &QAbstractButton::clicked, this, &BracketPage::enterRectangle);
        column->addWidget(begin, 0, Qt::AlignLeft);
        return;
    }
    if (fromUse_ || from_ >= static_cast<int>(bracket().holes.size())) {
        from_ = bracket().use;
    }
    plate_ = new PlateSection(bracket(), from_, content);
    unmeasured_ = wrappingWords(ToneLabel::Tone::problem, QString(), content);
    column->addWidget(plate_);
    column->addWidget(unmeasured_);
    connect(plate_, &PlateSection::plateRequested, this, [this](const Plate& plate) { ask(plate); });
    connect(plate_, &PlateSection::cornersRequested, this, [this](const Plate& plate, int corner) {
        cornerToEnter_ = corner;
        ask(plate);
        cornerToEnter_ = -1;
    });
    connect(plate_, &PlateSection::howToRequested, this, &BracketPage::plateHowToRequested);
    connect(plate_, &PlateSection::fromChosen, this, [this](int hole) {
        fromUse_ = false;
        from_ = hole;
        showState(state());
    });
    connect(plate_, &PlateSection::rectangleRequested, this, &BracketPage::enterRectangle);
    connect(plate_, &PlateSection::removalRequested, this, [this] { ask(std::nullopt); });
    plate_->showPlate(bracket(), state().style);
    plate_->enterCorner(cornerToEnter_);
}

void BracketPage::addHoles(QWidget* content, QVBoxLayout* column) {
    auto* section = new Section(tr("Holes"), content);
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        addHole(section, section->body(), hole);
    }
    QAbstractButton* plan = smallButton(
        tr("Plan a hole"), tr("Plan a hole"),
        tr("Adds a hole that is not drilled yet, above the current one; then enter its place."), section);
    plan->setEnabled(bracket().holes.size() < kMaxHoles);
    connect(plan, &QAbstractButton::clicked, this, &BracketPage::planHole);
    section->body()->addWidget(plan, 0, Qt::AlignLeft);
    column->addWidget(section);
}

void BracketPage::addHole(QWidget* parent, QVBoxLayout* column, int hole) {
    const BracketId at = *placeIn(state().car);
    const Hole& entered = bracket().holes[static_cast<std::size_t>(hole)];
    const QString name = holeName(bracket(), hole);
    const QString what = entered.planned         ? tr("planned")
                         : bracket().use == hole ? tr("bolted")
                                                 : tr("existing");
    auto* line = new QHBoxLayout;
    line->setContentsMargins(4, 4, 0, 0);
    auto* words = new ToneLabel(ToneLabel::Tone::plain, QStringLiteral("%1 · %2").arg(name, what), parent);
    words->setTextFormat(Qt::PlainText);
    line->addWidget(words, 1);
    if (entered.planned) {
        QAbstractButton* drilled = smallButton(tr("Drilled"), tr("%1 has been drilled").arg(name),
                                               tr("Says that this hole is there now."), parent);
        connect(drilled, &QAbstractButton::clicked, this, [this, at, hole] {
            hub().request(SetPlanned{at.link, at.end, hole, false});
        });
        line->addWidget(drilled);
        if (bracket().holes.size() > 1) {
            QAbstractButton* away = smallButton(tr("Remove"), tr("Remove planned hole %1").arg(name),
                                                tr("Gives the plan up."), parent);
            connect(away, &QAbstractButton::clicked, this, [this, at, hole] {
                hub().request(RemoveHole{at.link, at.end, hole});
            });
            line->addWidget(away);
        }
    }
    column->addLayout(line);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    if (hole == 0) {
        addPointHeadings(grid, 0, 0, state().car.links[static_cast<std::size_t>(at.link)].side, parent);
    }
    addPointFields(hub(), grid, 1, 0, holeField(at.link, at.end, hole, 0), parent);
    column->addLayout(grid);
}

void BracketPage::ask(const std::optional<Plate>& plate) {
    const BracketId at = *placeIn(state().car);
    chosen_ = at;  // stays, whichever bracket has the first plate from now on
    hub().request(SetPlate{at.link, at.end, plate});
}

void BracketPage::enterRectangle() {
    const Units units = state().style.units;
    const Plate rules = bracket().plate.value_or(startingRules(units));
    cornerToEnter_ = 0;
    ask(rectangleAround(bracket(), rules, units));
    cornerToEnter_ = -1;
}

// Above the one in use by the least spacing, or by an inch: somewhere to move it from.
void BracketPage::planHole() {
    const BracketId at = *placeIn(state().car);
    const Bracket& there = bracket();
    const auto taken = [&there](const std::string& name) {
        return std::ranges::any_of(there.holes, [&](const Hole& hole) { return hole.name == name; });
    };
    Hole added;
    added.name = "new";
    for (int number = 2; taken(added.name); ++number) {
        added.name = "new " + std::to_string(number);
    }
    added.planned = true;
    added.at = there.inUse().at;
    added.at.z() += there.plate ? there.plate->holeSpacing * there.plate->holeDiameter : kMetresPerInch;
    const int hole = static_cast<int>(there.holes.size());
    hub().request(AddHole{at.link, at.end, added}, holeField(at.link, at.end, hole, 0));
}

void BracketPage::refresh() {
    hub().refreshWords();
    const std::optional<BracketId> at = placeIn(state().car);
    empty_->setVisible(!at);
    card_->setVisible(at.has_value());
    facts_->setVisible(at.has_value());
    if (!at) {
        return;
    }
    title_->showText(capitalized(bracketWords(state().car, *at)));
    picture_->showBracket(bracket(), state().style);
    facts_->showFacts(bracketFacts(bracket(), state().style.units), bracketNote(bracket()));
    if (plate_ != nullptr) {
        plate_->showPlate(bracket(), state().style);
        showNotes();
    }
}

void BracketPage::showNotes() {
    const QString missing = unmeasuredOfPlate(*bracket().plate);
    unmeasured_->setVisible(!missing.isEmpty());
    unmeasured_->showText(tr("▲ Not measured yet: %1. They stand where they were put to start from; measure "
                             "over every number.")
                              .arg(missing));
}

}  // namespace bolthole
