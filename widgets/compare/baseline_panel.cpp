#include "widgets/compare/baseline_panel.h"

#include <QDate>
#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/edit.h"
#include "widgets/compare/difference_table.h"
#include "widgets/compare/difference_view.h"
#include "widgets/compare/keep_dialog.h"
#include "widgets/compare/kept_list.h"
#include "widgets/compare/ride_change_dialog.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

/// What the panel is made of.
class BaselinePanelParts {
  public:
    explicit BaselinePanelParts(QWidget* parent);

    [[nodiscard]] const KeptSetup* selected() const;
    void keepFocus();
    void showButtons();

    const BenchState* state = nullptr;
    const Comparison* comparison = nullptr;
    std::shared_ptr<const Car> beforeBolting;

    KeptList* list;
    ToneLabel* empty;
    DifferenceView* view;
    QPushButton* keep;
    QPushButton* whatIf;
    QPushButton* other;
    QToolButton* sheet;
    QPushButton* compare;
    QPushButton* swap;
    QPushButton* restore;
    QPushButton* rename;
    QPushButton* remove;

  private:
    void layOut(QWidget* parent);
};

namespace {

constexpr int kListWidth = 262;

QPushButton* button(const QString& text, const QString& toolTip, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setToolTip(wrappedToolTip(toolTip));
    made->setAccessibleDescription(toolTip);
    made->setAutoDefault(false);
    return made;
}

std::string today() {
    return QDate::currentDate().toString(Qt::ISODate).toStdString();
}

// "top / high", told from the states kept that are called so already.
std::string defaultName(const Car& car, const std::vector<KeptSetup>& kept) {
    const std::string holes = car.links.empty() ? std::string() : holeNames(holesInUse(car), car);
    const std::string base = holes.empty() ? BaselinePanel::tr("as it stands").toStdString() : holes;
    std::string name = base;
    for (int number = 2; std::ranges::find(kept, name, &KeptSetup::name) != kept.end(); ++number) {
        name = base + ", " + std::to_string(number);
    }
    return name;
}

QString faultWords(const BenchState& state) {
    return BaselinePanel::tr("The car can't be computed as it stands: %1: %2.")
        .arg(QString::fromStdString(state.faults.front().path),
             QString::fromStdString(state.faults.front().reason));
}

// Why a car has no figures at ride; empty: it has.
QString assemblyWords(const QString& name, const Trace& trace, const Car& car, Units units) {
    return trace.assembly.usable()
               ? QString()
               : BaselinePanel::tr("%1 can't be assembled: %2.")
                     .arg(name, QString::fromStdString(describe(trace.assembly, car, units)));
}

// Whether a car that was bolted otherwise can stand in for a baseline that shows no difference.
bool offersBeforeBolting(const BenchState& state, const Comparison* comparison, const Car* car) {
    const bool isEmpty =
        state.car.baselineSetup() == nullptr || (comparison != nullptr && !anythingDiffers(*comparison));
    return car != nullptr && isEmpty && state.faults.empty() && findFaults(*car).empty() &&
           holesInUse(*car) != holesInUse(state.car);
}

// Why there is no table to show; empty: there is one.
QString messageFor(const BenchState& state, const Comparison* comparison) {
    if (state.car.kept.empty()) {
        return BaselinePanel::tr("Keep the current car, then move a bolt: the difference shows here.");
    }
    const KeptSetup* baseline = state.car.baselineSetup();
    if (baseline == nullptr) {
        return BaselinePanel::tr("Choose a kept setup and compare with it: the difference shows here.");
    }
    if (!state.faults.empty()) {
        return faultWords(state);
    }
    const QString name = QStringLiteral("'%1'").arg(QString::fromStdString(baseline->name));
    const Units units = state.style.units;
    if (comparison == nullptr) {
        const QString words = assemblyWords(name, computeTrace(*baseline->car), *baseline->car, units);
        return words.isEmpty() ? BaselinePanel::tr("%1 was not compared yet.").arg(name) : words;
    }
    const QString first = assemblyWords(name, comparison->before, comparison->beforeCar, units);
    return first.isEmpty() ? assemblyWords(BaselinePanel::tr("The current car"), comparison->after,
                                           comparison->afterCar, units)
                           : first;
}

}  // namespace

BaselinePanelParts::BaselinePanelParts(QWidget* parent)
    : list(new KeptList(parent)),
      empty(new ToneLabel(ToneLabel::Tone::muted, BaselinePanel::tr("Nothing kept yet."), parent)),
      view(new DifferenceView(parent)),
      keep(button(BaselinePanel::tr("&Keep this setup…"),
                  BaselinePanel::tr("Keep the current car under a name, and compare with it from then on."),
                  parent)),
      whatIf(button(
          BaselinePanel::tr("Change &tires or ride height…"),
          BaselinePanel::tr("Other tires or another ride height: every measured point is recalculated."),
          parent)),
      other(button(BaselinePanel::tr("&Another car file…"),
                   BaselinePanel::tr("Take another car file as the baseline."), parent)),
      sheet(new QToolButton(parent)),
      compare(button(BaselinePanel::tr("Co&mpare with"), {}, parent)),
      swap(button(
          BaselinePanel::tr("S&wap"),
          BaselinePanel::tr("The baseline comes to the bench, and the current car becomes the baseline. "
                            "Undo turns it back."),
          parent)),
      restore(
          button(BaselinePanel::tr("&Recover"),
                 BaselinePanel::tr("Put the selected setup on the bench; the kept ones stay. Undo turns it "
                                   "back."),
                 parent)),
      rename(button(BaselinePanel::tr("&Rename…"),
                    BaselinePanel::tr("Change name and note of the selected setup (F2)."), parent)),
      remove(button(
          BaselinePanel::tr("&Delete"),
          BaselinePanel::tr("Delete the selected setup (Delete key). It is not asked about: undo brings "
                            "it back."),
          parent)) {
    sheet->setText(BaselinePanel::tr("Change shee&t ▾"));
    sheet->setAccessibleName(BaselinePanel::tr("Change sheet"));
    sheet->setStyleSheet(QStringLiteral("QToolButton::menu-indicator { image: none; }"));
    sheet->setToolTip(
        wrappedToolTip(BaselinePanel::tr("What to turn and what to expect, on paper to carry to the car.")));
    sheet->setPopupMode(QToolButton::InstantPopup);
    sheet->setFocusPolicy(Qt::StrongFocus);
    sheet->setMenu(new QMenu(sheet));
    layOut(parent);
}

// All buttons stand with the list, so that the table has the panel's whole height.
void BaselinePanelParts::layOut(QWidget* parent) {
    auto* leftSide = new QWidget(parent);
    leftSide->setFixedWidth(kListWidth);
    auto* left = new QVBoxLayout(leftSide);
    left->setContentsMargins(0, 0, 0, 0);
    left->setSpacing(4);
    const auto addRow = [left](std::initializer_list<QWidget*> parts) {
        auto* row = new QHBoxLayout;
        row->setSpacing(4);
        for (QWidget* each : parts) {
            row->addWidget(each, 1);
        }
        left->addLayout(row);
    };
    for (QWidget* each : std::initializer_list<QWidget*>{keep, sheet, other}) {
        each->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    }
    addRow({keep, other});
    addRow({whatIf});
    left->addWidget(list, 1);
    left->addWidget(empty, 1, Qt::AlignCenter);
    addRow({compare, swap});
    addRow({restore, rename, remove});
    addRow({sheet});
    auto* sides = new QHBoxLayout(parent);
    sides->setContentsMargins(10, 4, 10, 4);
    sides->setSpacing(12);
    sides->addWidget(leftSide);
    sides->addWidget(view, 1);
    QWidget* last = keep;
    for (QWidget* each : std::initializer_list<QWidget*>{other, whatIf, list, compare, swap, restore, rename,
                                                         remove, sheet}) {
        QWidget::setTabOrder(last, each);
        last = each;
    }
}

const KeptSetup* BaselinePanelParts::selected() const {
    const std::optional<int> row = list->selected();
    const bool exists = state != nullptr && row && static_cast<std::size_t>(*row) < state->car.kept.size();
    return exists ? &state->car.kept[static_cast<std::size_t>(*row)] : nullptr;
}

// Where the last setup is gone, and the list and what is done to its rows with it, the toolkit would go on to
// whatever comes next in the window.
void BaselinePanelParts::keepFocus() {
    const auto hasFocus = [](const QWidget* each) { return each->hasFocus(); };
    if (state != nullptr && state->car.kept.empty() &&
        std::ranges::any_of(std::initializer_list<QWidget*>{list, compare, restore, rename, remove},
                            hasFocus)) {
        keep->setFocus(Qt::OtherFocusReason);
    }
}

void BaselinePanelParts::showButtons() {
    keepFocus();
    const bool hasSelected = selected() != nullptr;
    const bool isBefore = hasSelected && state->car.baseline == list->selected();
    compare->setText(isBefore ? BaselinePanel::tr("Don't co&mpare") : BaselinePanel::tr("Co&mpare with"));
    const QString words =
        isBefore ? BaselinePanel::tr("No setup is the baseline any more; all stay kept.")
                 : BaselinePanel::tr("Make the selected setup the baseline (Enter in the list).");
    compare->setToolTip(wrappedToolTip(words));
    compare->setAccessibleDescription(words);
    for (QPushButton* each : {compare, restore, rename, remove}) {
        each->setEnabled(hasSelected);
    }
    swap->setEnabled(state != nullptr && state->car.baselineSetup() != nullptr);
    sheet->setEnabled(comparison != nullptr);
    keep->setEnabled(state != nullptr && state->faults.empty());
}

BaselinePanel::BaselinePanel(QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<BaselinePanelParts>(this)) {
    setAccessibleName(tr("Before and after"));
    QMenu* menu = parts_->sheet->menu();
    menu->addAction(tr("&Preview and print…"), this, &BaselinePanel::sheetPreviewRequested);
    menu->addAction(tr("&Save as PDF…"), this, &BaselinePanel::sheetFileRequested);
    connect(parts_->keep, &QPushButton::clicked, this, &BaselinePanel::askKeep);
    connect(parts_->whatIf, &QPushButton::clicked, this, &BaselinePanel::askRideChange);
    connect(parts_->other, &QPushButton::clicked, this, &BaselinePanel::otherCarRequested);
    connect(parts_->swap, &QPushButton::clicked, this,
            [this] { emit edited(SwapBaseline{today()}, EditPhase::whole); });
    connect(parts_->view, &DifferenceView::offerTaken, this, &BaselinePanel::compareWithBeforeBolting);
    connectStates();
    parts_->list->hide();
    parts_->showButtons();
}

// What is done to the selected state, by button or from the list itself.
void BaselinePanel::connectStates() {
    KeptList* list = parts_->list;
    const auto onSelected = [this, list](QPushButton* source, const auto& act) {
        connect(source, &QPushButton::clicked, this, [list, act] {
            if (const std::optional<int> state = list->selected()) {
                act(*state);
            }
        });
    };
    const auto remove = [this](int state) { emit edited(RemoveKept{state}, EditPhase::whole); };
    onSelected(parts_->compare, [this](int state) {
        const bool isBefore = parts_->state->car.baseline == state;
        emit edited(SetBaseline{isBefore ? std::nullopt : std::optional(state)}, EditPhase::whole);
    });
    onSelected(parts_->restore, [this](int state) { emit edited(RestoreKept{state}, EditPhase::whole); });
    onSelected(parts_->rename, [this](int state) { askDescribe(state); });
    onSelected(parts_->remove, remove);
    connect(list, &KeptList::compareRequested, this,
            [this](int state) { emit edited(SetBaseline{state}, EditPhase::whole); });
    connect(list, &KeptList::renameRequested, this, &BaselinePanel::askDescribe);
    connect(list, &KeptList::deleteRequested, this, remove);
    connect(list, &QListWidget::currentRowChanged, this, [this] { parts_->showButtons(); });
}

BaselinePanel::~BaselinePanel() = default;

void BaselinePanel::showState(const BenchState& state, const Comparison* comparison) {
    parts_->state = &state;
    parts_->comparison = comparison;
    parts_->list->showStates(state.car);
    parts_->list->setVisible(!state.car.kept.empty());
    parts_->empty->setVisible(state.car.kept.empty());
    const QString message = messageFor(state, comparison);
    parts_->view->showState(state, state.car.baselineSetup() == nullptr ? nullptr : comparison, message);
    parts_->view->showOffer(offersBeforeBolting(state, comparison, parts_->beforeBolting.get()));
    parts_->showButtons();
}

void BaselinePanel::offerBeforeBolting(std::shared_ptr<const Car> car) {
    parts_->beforeBolting = std::move(car);
}

// A setup that is kept already is the baseline once more; else the car is kept under the names of its holes.
void BaselinePanel::compareWithBeforeBolting() {
    const std::vector<KeptSetup>& kept = parts_->state->car.kept;
    Car before = withoutKept(*parts_->beforeBolting);
    const auto found = std::ranges::find_if(kept, [&](const KeptSetup& each) { return *each.car == before; });
    if (found != kept.end()) {
        emit edited(SetBaseline{static_cast<int>(found - kept.begin())}, EditPhase::whole);
        return;
    }
    const std::string name = defaultName(before, kept);
    emit edited(KeepSetup{name, today(), {}, std::make_shared<const Car>(std::move(before))},
                EditPhase::whole);
}

void BaselinePanel::showCursor(const BenchState& state, const Comparison* comparison) {
    parts_->state = &state;
    parts_->comparison = comparison;
    parts_->view->showCursor(state, comparison);
}

void BaselinePanel::askKeep() {
    if (parts_->state == nullptr) {
        return;
    }
    auto* dialog =
        new KeepDialog(tr("Keep this setup"), tr("Keep"),
                       {defaultName(parts_->state->car, parts_->state->car.kept), today(), {}}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog] {
        const KeptWords words = dialog->words();
        emit edited(KeepSetup{words.name, words.date, words.note, nullptr}, EditPhase::whole);
    });
    dialog->open();
}

void BaselinePanel::askDescribe(int state) {
    const KeptSetup& kept = parts_->state->car.kept[static_cast<std::size_t>(state)];
    auto* dialog = new KeepDialog(tr("Name and note"), tr("Rename"), {kept.name, kept.date, kept.note}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog, state] {
        const KeptWords words = dialog->words();
        emit edited(DescribeKept{state, words.name, words.note}, EditPhase::whole);
    });
    dialog->open();
}

void BaselinePanel::askRideChange() {
    if (parts_->state == nullptr) {
        return;
    }
    const BenchState& state = *parts_->state;
    auto* dialog = new RideChangeDialog(state.car, state.style,
                                        state.faults.empty() ? QString() : faultWords(state), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &RideChangeDialog::previewed, this, &BaselinePanel::ridePreviewed);
    connect(dialog, &RideChangeDialog::howToRequested, this, &BaselinePanel::howToRequested);
    connect(dialog, &QDialog::finished, this, [this] { emit ridePreviewed(nullptr); });
    connect(dialog, &QDialog::accepted, this, [this, dialog] {
        if (const std::optional<RideChange> change = dialog->change()) {
            takeRideChange(*change, dialog->answer() == RideChangeDialog::Answer::keep);
        }
    });
    dialog->open();
}

void BaselinePanel::takeRideChange(const RideChange& change, bool keeps) {
    const ChangeRide edit{change};
    if (!keeps) {
        emit edited(edit, EditPhase::whole);
        return;
    }
    const Car& car = parts_->state->car;
    CarResult changed = changeRide(withoutKept(car), change);
    if (changed.car) {
        const std::string words = describe(edit, car);
        emit edited(KeepSetup{.name = words.substr(words.find(": ") + 2),
                              .date = QDate::currentDate().toString(Qt::ISODate).toStdString(),
                              .note = {},
                              .other = std::make_shared<const Car>(std::move(*changed.car)),
                              .asBaseline = false},
                    EditPhase::whole);
    }
}

}  // namespace bolthole
