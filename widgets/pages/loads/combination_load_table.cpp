#include "widgets/pages/loads/combination_load_table.h"

#include <QElapsedTimer>
#include <algorithm>
#include <utility>

#include "widgets/kit/unit_text.h"
#include "widgets/pages/loads/loads_facts.h"

namespace bolthole {

namespace {

constexpr qint64 kPortion = 8;  // ms of computing before the window gets its turn
constexpr int kShownRows = 12;
constexpr std::size_t kToldEvery = 50;  // combinations between two words of how far it is

bool isSameCase(const LinkCase& one, const LinkCase& other) {
    return one.load == other.load && one.parts == other.parts && one.factor == other.factor;
}

Car sweptCoarsely(Car car) {
    car.travel.steps = std::min(car.travel.steps, CombinationLoadTable::kMostRows);
    return car;
}

}  // namespace

struct CombinationLoadTable::Job {
    Job(Car whole, LengthTreatment treatment, LinkCase with)
        : car(std::move(whole)),
          asked(std::move(with)),
          lengths(treatment),
          near(nearCombinations(car, kMostCombinations)),
          solver(sweptCoarsely(car), lengths, asked) {}

    Car car;
    LinkCase asked;
    LengthTreatment lengths;
    NearCombinations near;
    CombinationLoadSolver solver;
    std::vector<CombinationLoad> loads;
};

CombinationLoadTable::CombinationLoadTable(QWidget* parent)
    : ReadTable(tr("Worst link load of every hole combination"),
                {tr("holes"), tr("bolts"), tr("load"), tr("joint"), tr("at"), tr("of rating"),
                 tr("anti-squat"), tr("remark")},
                parent) {
    setMostRows(kShownRows);
    timer_.setInterval(0);
    connect(&timer_, &QTimer::timeout, this, &CombinationLoadTable::work);
}

CombinationLoadTable::~CombinationLoadTable() = default;

void CombinationLoadTable::showNone() {
    timer_.stop();
    job_.reset();
    setRows(0);
    fit();
}

void CombinationLoadTable::showCombinations(const Car& car, LengthTreatment lengths, const LinkCase& with,
                                            Units units) {
    units_ = units;
    Car alone = withoutKept(car);
    if (job_ && job_->car == alone && job_->lengths == lengths && isSameCase(job_->asked, with)) {
        if (!timer_.isActive()) {
            showRows();
        }
        return;
    }
    job_ = std::make_unique<Job>(std::move(alone), lengths, with);
    setRows(0);
    fit();
    timer_.start();
    emit progressed();
}

void CombinationLoadTable::hideEvent(QHideEvent* event) {
    ReadTable::hideEvent(event);
    timer_.stop();
}

void CombinationLoadTable::showEvent(QShowEvent* event) {
    ReadTable::showEvent(event);
    if (job_ && job_->loads.size() < job_->near.uses.size()) {
        timer_.start();
    }
}

void CombinationLoadTable::work() {
    QElapsedTimer clock;
    clock.start();
    const std::size_t before = job_->loads.size();
    while (job_->loads.size() < job_->near.uses.size() && clock.elapsed() < kPortion) {
        job_->loads.push_back(job_->solver.solve(job_->near.uses[job_->loads.size()]));
    }
    const bool isDone = job_->loads.size() == job_->near.uses.size();
    if (isDone) {
        timer_.stop();
        showRows();
    }
    if (isDone || before / kToldEvery != job_->loads.size() / kToldEvery) {
        emit progressed();
    }
}

void CombinationLoadTable::showRows() {
    horizontalHeaderItem(kLoad)->setText(tr("load, %1").arg(unitText(Quantity::force, units_)));
    const std::string factor = fieldText(job_->asked.factor, Quantity::ratio, NumberStyle{units_});
    horizontalHeaderItem(kOfRating)->setText(tr("load × %1 of rating").arg(QString::fromStdString(factor)));
    const std::vector<std::size_t> order = byLoad(job_->loads);
    setRows(static_cast<int>(order.size()));
    for (std::size_t row = 0; row < order.size(); ++row) {
        showRow(static_cast<int>(row), job_->loads[order[row]]);
    }
    fit();
}

void CombinationLoadTable::showRow(int row, const CombinationLoad& combination) {
    const bool isPresent = combination.boltsMoved == 0;
    QStringList remarks;
    if (isPresent) {
        remarks << tr("bolted now");
    }
    if (!combination.assembled) {
        remarks << tr("can't be assembled");
    } else if (!combination.balanced) {
        remarks << tr("not held");
    }
    if (combination.springsPull) {
        remarks << tr("spring pulls");
    }
    if (!combination.determinate) {
        remarks << tr("one possible share");
    }
    const bool isKnown = combination.link >= 0;
    const QString none(QChar(0x2014));
    const QString holes = QString::fromStdString(holeNames(combination.use, job_->car));
    setCell(row, kHoles, holes.isEmpty() ? tr("the only holes") : holes, true);
    setCell(row, kBolts, QString::number(combination.boltsMoved));
    setCell(row, kLoad, QString::fromStdString(figureText(combination.load, Quantity::force, units_)));
    QString joint = none;
    if (isKnown) {
        joint = QString::fromStdString(jointWords(job_->car, combination.link, combination.side));
        joint +=
            combination.isRod ? (combination.isTension ? tr(", tension") : tr(", compression")) : QString();
    }
    setCell(row, kJoint, joint, true);
    setCell(row, kAt, travelWords(combination.at, units_), true);
    const bool isOver = combination.ratingUse && *combination.ratingUse > 1;
    setCell(row, kOfRating,
            combination.ratingUse ? figureWithUnit(100 * *combination.ratingUse, Quantity::percent, units_) +
                                        (isOver ? tr(", over") : QString())
                                  : none);
    setProblem(row, kOfRating, isOver);
    setCell(row, kAntiSquat, figureWithUnit(combination.antiSquat, Quantity::percent, units_));
    setCell(row, kRemark, remarks.join(QStringLiteral(", ")), true);
    setStrong(row, isPresent);
}

bool CombinationLoadTable::hasShared() const {
    return job_ &&
           std::ranges::any_of(job_->loads, [](const CombinationLoad& load) { return !load.determinate; });
}

bool CombinationLoadTable::hasPulling() const {
    return job_ && std::ranges::any_of(job_->loads, &CombinationLoad::springsPull);
}

QString CombinationLoadTable::summary() const {
    if (!job_) {
        return {};
    }
    const std::size_t asked = job_->near.uses.size();
    const QString lengths = QString::fromUtf8(wordsFor(job_->lengths).data(),
                                              static_cast<qsizetype>(wordsFor(job_->lengths).size()));
    QString words = job_->near.isAll() ? tr("%1 hole combinations").arg(asked)
                                       : tr("The %1 hole combinations that move the fewest bolts, of %2")
                                             .arg(asked)
                                             .arg(job_->near.total);
    words += tr("; %1. The thrust and the tires' loads are the same for all.").arg(lengths);
    words += tr(" Bolts: how many are moved, both sides counted.");
    if (job_->car.travel.steps > kMostRows) {
        words += tr(" Swept in %1 rows of travel.").arg(kMostRows);
    }
    if (job_->loads.size() < asked) {
        words += tr(" Computing: %1 done.").arg(job_->loads.size());
    }
    return words;
}

}  // namespace bolthole
