#include "widgets/pages/springs/springs_page.h"

#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/kit/card.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/springs/spring_facts.h"
#include "widgets/pages/springs/spring_scene.h"
#include "widgets/pages/springs/spring_section.h"
#include "widgets/words/spring_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

SpringsPage::SpringsPage(QWidget* parent) : WorkPage(tr("Springs"), parent) {
    buildResults();
}

std::string SpringsPage::shapeOf(const Car& car) const {
    std::string shape;
    for (const SuspensionPart& part : car.springs) {
        shape += SpringSection::shapeOf(part) + ';';
    }
    return shape;
}

void SpringsPage::fill(QWidget* content, QVBoxLayout* column) {
    sections_.clear();
    auto* words =
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("▲ A squeezed spring holds enough energy to kill. Stands under the body, "
                         "wheels chocked, a compressor made for that spring, nobody in its way; never "
                         "work on a spring that is loaded. Straps and stops, and what they bolt to, are "
                         "for a qualified eye."),
                      content);
    words->setWordWrap(true);
    words->setContentsMargins(4, 0, 4, 0);
    column->addWidget(words);
    column->addWidget(addButton(content), 0, Qt::AlignLeft);
    for (int item = 0; item < static_cast<int>(state().car.springs.size()); ++item) {
        addSection(item, content, column);
    }
}

QWidget* SpringsPage::addButton(QWidget* parent) {
    auto* button = new QPushButton(tr("Add a spring, shock or stop ▾"), parent);
    button->setAccessibleName(tr("Add a spring, shock or stop"));
    button->setEnabled(state().car.springs.size() < kMaxSprings);
    button->setToolTip(
        wrappedToolTip(tr("Puts in a part with mounts where such parts usually stand. They are "
                          "not your car's: measure each one.")));
    auto* menu = new QMenu(button);
    const std::pair<PartKind, QString> kinds[] = {{PartKind::spring, tr("&Spring")},
                                                  {PartKind::shock, tr("S&hock")},
                                                  {PartKind::coilOver, tr("&Coilover")},
                                                  {PartKind::bumpStop, tr("&Bump stop")},
                                                  {PartKind::strap, tr("S&trap")}};
    for (const auto& [kind, name] : kinds) {
        connect(menu->addAction(name), &QAction::triggered, this, [this, of = kind] { addPart(of); });
    }
    connect(button, &QAbstractButton::clicked, this,
            [button, menu] { menu->popup(button->mapToGlobal(QPoint(0, button->height()))); });
    return button;
}

void SpringsPage::addSection(int item, QWidget* content, QVBoxLayout* column) {
    auto* section = new SpringSection(hub(), item, content);
    section->setUnfolded(std::ranges::find(folded_, item) == folded_.end());
    connect(section->header(), &QAbstractButton::toggled, this, [this, item, section](bool unfolded) {
        std::erase(folded_, item);
        if (!unfolded) {
            folded_.push_back(item);
        }
        section->refresh();
    });
    connect(section, &SpringSection::removeRequested, this, &SpringsPage::removePart);
    column->addWidget(section);
    sections_.push_back(section);
}

void SpringsPage::addPart(PartKind kind) {
    const auto item = static_cast<int>(state().car.springs.size());
    chosen_ = item;
    hub().request(AddSpring{startingSpring(state().car, kind)},
                  {.field = Field::mountAt, .end = End::chassis, .hole = 0, .axis = 0, .item = item});
}

void SpringsPage::removePart(int item) {
    std::erase(folded_, item);
    for (int& folded : folded_) {
        folded -= folded > item ? 1 : 0;
    }
    hub().request(RemoveSpring{item});
}

void SpringsPage::buildResults() {
    hint_ =
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("Nothing here yet. Add the rear springs, shocks, bump stops and straps at left by "
                         "their mounts on chassis and axle; with their lengths the page tells what runs "
                         "out first, with rates what the wheels feel."),
                      this);
    problem_ = new ToneLabel(ToneLabel::Tone::problem, QString(), this);
    for (ToneLabel* label : {hint_, problem_}) {
        label->setWordWrap(true);
        label->setContentsMargins(6, 4, 6, 4);
        results()->addWidget(label);
    }
    results()->addWidget(buildFirstOut());
    results()->addWidget(buildPicture());
    results()->addWidget(buildCurves());
    results()->addWidget(buildRates());
    partColumn_ = new QVBoxLayout;
    partColumn_->setSpacing(12);
    results()->addLayout(partColumn_);
    results()->addStretch(1);
}

QWidget* SpringsPage::buildFirstOut() {
    firstOut_ = new FactCard(tr("What stops travel first"), this);
    auto* row = new QHBoxLayout;
    const QString how = tr("Enters the travel that is left, rounded down, as the car's: one undo step.");
    cutBump_ = new QPushButton(firstOut_);
    cutDroop_ = new QPushButton(firstOut_);
    for (QAbstractButton* button : {cutBump_, cutDroop_}) {
        button->setToolTip(wrappedToolTip(how));
        row->addWidget(button);
    }
    row->addStretch(1);
    static_cast<QVBoxLayout*>(firstOut_->layout())->addLayout(row);
    connect(cutBump_, &QAbstractButton::clicked, this, [this] { cut(Field::bump, found_.room.bump); });
    connect(cutDroop_, &QAbstractButton::clicked, this, [this] { cut(Field::droop, found_.room.droop); });
    return firstOut_;
}

QWidget* SpringsPage::buildPicture() {
    auto* card = new Card(this);
    pictureCard_ = card;
    auto* column = new QVBoxLayout(card);
    column->setContentsMargins(Card::kInset, 6, Card::kInset, Card::kInset);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(10, 0, 6, 0);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("Parts at the cursor, to scale"), card);
    title->setFont(textFont(TextSize::title, true));
    row->addWidget(title, 1);
    picture_ = new SpringsPicture(card);
    for (const SpringsSight sight : {SpringsSight::behind, SpringsSight::side}) {
        const QString text = sight == SpringsSight::behind ? tr("from behind") : tr("from the side");
        const QString tip = sight == SpringsSight::behind
                                ? tr("Seen from behind, the car's left at left.")
                                : tr("Seen from the side, the car's front at right.");
        QAbstractButton* button = smallButton(text, tr("Picture %1").arg(text), tip, card);
        button->setCheckable(true);
        button->setChecked(sight == SpringsSight::behind);
        button->setAutoExclusive(true);
        row->addWidget(button);
        connect(button, &QAbstractButton::clicked, this, [this, sight] { picture_->setSight(sight); });
    }
    column->addLayout(row);
    column->addWidget(picture_);
    connect(picture_, &SpringsPicture::picked, this, &SpringsPage::choosePart);
    return card;
}

QWidget* SpringsPage::buildCurves() {
    curvesCard_ = new QWidget(this);
    auto* column = new QVBoxLayout(curvesCard_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(4, 0, 0, 0);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("Through travel"), curvesCard_);
    title->setFont(textFont(TextSize::title, true));
    partChoice_ = new CalmCombo(curvesCard_);
    partChoice_->setAccessibleName(tr("Part whose curves are shown"));
    partChoice_->setMinimumWidth(190);
    row->addWidget(title, 1);
    row->addWidget(partChoice_);
    column->addLayout(row);
    ChartLook look;
    look.head = ChartLook::Head::keys;
    look.size = {560, 340};
    look.leastSize = {400, 300};
    curves_ = new CurveChart(tr("Curves of the springs through travel"), look, curvesCard_);
    curves_->setStatusTip(
        tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    column->addWidget(curves_);
    connect(partChoice_, &QComboBox::activated, this,
            [this](int index) { choosePart(partChoice_->itemData(index).toInt()); });
    connect(curves_, &CurveChart::cursorMoved, this, &SpringsPage::setTravel);
    return curvesCard_;
}

QWidget* SpringsPage::buildRates() {
    rates_ = new FactCard(tr("Rear wheel rate"), this);
    QAbstractButton* enter =
        smallButton(tr("Rate on the Weights page…"), tr("Enter a rear wheel rate"),
                    tr("Goes to the rear wheel rate on the Weights page; one entered there goes before the "
                       "springs' own."),
                    rates_);
    static_cast<QVBoxLayout*>(rates_->layout())->addWidget(enter, 0, Qt::AlignLeft);
    connect(enter, &QAbstractButton::clicked, this,
            [this] { emit fieldRequested({.field = Field::rearWheelRate}); });
    return rates_;
}

void SpringsPage::choosePart(int item) {
    chosen_ = item;
    showChosen();
}

void SpringsPage::setTravel(double travel) {
    travel_ = travel;
    showChosen();
}

void SpringsPage::cut(Field field, const TravelEnd& end) {
    hub().request(
        SetNumber{{.field = field}, roundedDown(end, state().style.units), SetNumber::By::workedOut});
}

// The bench's cursor is taken over whenever it was moved there.
void SpringsPage::showEvent(QShowEvent* event) {
    WorkPage::showEvent(event);
    if (hub().hasState() && benchTravel_ != state().cursorTravel) {
        benchTravel_ = travel_ = state().cursorTravel;
        showChosen();
    }
}

void SpringsPage::refreshSections() {
    for (SpringSection* section : sections_) {
        section->refresh();
    }
}

void SpringsPage::refresh() {
    hub().refreshWords();
    refreshSections();
    found_ = findSprings(state());
    const bool some = !state().car.springs.empty();
    const bool computed = some && found_.problem.empty();
    hint_->setVisible(!some);
    problem_->showText(tr("▲ Not computed: %1").arg(QString::fromStdString(found_.problem)));
    problem_->setVisible(some && !computed);
    for (QWidget* card : {static_cast<QWidget*>(firstOut_), pictureCard_, static_cast<QWidget*>(rates_)}) {
        card->setVisible(computed);
    }
    if (computed) {
        showFirstOut();
    }
    showParts();
    showChosen();
    showFacts();
}

void SpringsPage::showFirstOut() {
    firstOut_->showFacts(roomFacts(state().car, found_), missingLengths(state().car));
    const auto offer = [this](QAbstractButton* button, const QString& words, const TravelEnd& end) {
        const NumberStyle style = state().style;
        const std::string text = fieldText(roundedDown(end, style.units), Quantity::length, style);
        button->setText(words.arg(QString::fromStdString(withUnit(text, Quantity::length, style.units))));
        button->setVisible(isPast(end));
    };
    offer(cutBump_, tr("Limit bump to %1"), found_.room.bump);
    offer(cutDroop_, tr("Limit droop to %1"), found_.room.droop);
}

// The parts that have curves; the chosen one stays where it can.
void SpringsPage::showParts() {
    partChoice_->clear();
    if (!found_.problem.empty()) {
        return;
    }
    for (const int item : found_.items) {
        partChoice_->addItem(springName(state().car, item), item);
    }
    if (!found_.items.empty() && std::ranges::find(found_.items, chosen_) == found_.items.end()) {
        chosen_ = found_.items.front();
    }
}

void SpringsPage::showChosen() {
    const bool some = found_.problem.empty() && !found_.items.empty();
    curvesCard_->setVisible(some);
    if (!found_.problem.empty() || state().car.springs.empty()) {
        return;
    }
    const Car& car = state().car;
    travel_ = std::clamp(travel_, -car.travel.droop, car.travel.bump);
    const std::vector<LineFigures> there = lineFiguresAt(car, found_.parts, travel_);
    picture_->showScene(springsScene(car, found_, travel_, there, chosen_));
    if (some) {
        partChoice_->setCurrentIndex(partChoice_->findData(chosen_));
        const SpringChart chart = springChart(car, found_, travel_, there, chosen_);
        const bool hasStarts = restsOnStarts(car, {Scope::hole, Scope::link, Scope::mount, Scope::spring});
        curves_->showCards(chart.axis, withStartingMark(chart.cards, hasStarts));
        curves_->showCursor(travel_, chart.values);
    }
}

void SpringsPage::showFacts() {
    CardFacts facts;
    const Car& car = state().car;
    if (found_.problem.empty() && !car.springs.empty()) {
        facts = springCards(car, found_);
        if (state().showsUncertainty) {
            uncertainty_.addTo(
                facts, car, car.units,
                [](const Car& varied) { return springCards(varied, findSpringsAtRide(varied)); },
                whileCurrent([this] { showFacts(); }));
        }
        rates_->showFacts(facts.front());
    }
    showPartCards(facts);
}

// `facts`: of the rates' card, then of each part; empty where nothing is computed.
void SpringsPage::showPartCards(const CardFacts& facts) {
    const std::size_t count = facts.empty() ? 0 : facts.size() - 1;
    for (std::size_t item = 0; item < std::max(count, partCards_.size()); ++item) {
        if (item == partCards_.size()) {
            partCards_.push_back({QString(), nullptr});
        }
        PartCard& each = partCards_[item];
        const QString title = item < count ? springTitle(state().car, static_cast<int>(item)) : QString();
        if (each.card == nullptr || each.title != title) {
            delete each.card;
            each = {title, title.isEmpty() ? nullptr : new FactCard(title, this)};
            if (each.card != nullptr) {
                partColumn_->insertWidget(static_cast<int>(item), each.card);
                each.card->show();
            }
        }
        if (each.card != nullptr) {
            each.card->showFacts(facts[item + 1]);
        }
    }
    partCards_.resize(count);
}

}  // namespace bolthole
