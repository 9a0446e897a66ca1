// A before panel with what document and window would do around it, for tests that type and click.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>
#include <QToolButton>
#include <optional>
#include <string>
#include <vector>

#include "tests/support/sheet_bench.h"
#include "widgets/compare/baseline_panel.h"

namespace bolthole::test {

/// Every edit is applied and the result compared and shown.
class BaselineBench : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    BaselineBench() {
        state_.car = inventedCar();
        state_.car.driveline = Driveline{0.026, {0.28, 0, 0.343}, 0.057, {1.5, 0, 0.387}};
        state_.style = {Units::inch, InchStyle::sixteenths};
        QObject::connect(&panel_, &BaselinePanel::edited, &panel_, [this](const Edit& edit) {
            edits_.push_back(edit);
            make(edit);
        });
        panel_.resize(1000, 330);
        panel_.show();
        QApplication::setActiveWindow(&panel_);
        show();
    }

    // What the document does.
    void make(const Edit& edit) {
        const EditResult result = bolthole::apply(state_.car, edit);
        ASSERT_EQ(result.refusal, "");
        undo_.push_back(state_.car);
        state_.car = result.car;
        show();
    }
    void undo() {
        state_.car = undo_.back();
        undo_.pop_back();
        show();
    }

    // What the window does.
    void show() {
        state_.faults = findFaults(state_.car);
        comparison_.reset();
        state_.baseline.reset();
        if (const KeptSetup* baseline = state_.car.baselineSetup()) {
            state_.baseline.emplace();
            state_.baseline->car = *baseline->car;
            computeTrace(state_.baseline->car, state_.baseline->trace);
            if (state_.faults.empty()) {
                comparison_ = compareCars(*baseline->car, state_.car);
            }
        }
        moveCursor();
        panel_.showState(state_, comparison());
    }
    void moveCursor() {
        if (state_.faults.empty()) {
            state_.cursor = solveStation(state_.car, state_.cursorTravel);
        }
        if (state_.baseline) {
            state_.baseline->cursor = solveStation(state_.baseline->car, state_.cursorTravel);
        }
    }
    const Comparison* comparison() { return comparison_ ? &*comparison_ : nullptr; }

    void keep(const std::string& name, const std::string& note = {}) {
        make(KeepSetup{name, "2026-11-02", note, nullptr});
    }
    void boltTop() { make(UseHole{0, End::axle, 0}); }

    template <class Kind>
    Kind* part(const char* name) {
        return panel_.findChild<Kind*>(QString::fromLatin1(name));
    }
    QPushButton* button(const QString& words) {
        for (auto* each : panel_.findChildren<QPushButton*>()) {
            if (each->text().remove(QLatin1Char('&')) == words) {
                return each;
            }
        }
        return nullptr;
    }
    void click(const QString& words) {
        QPushButton* found = button(words);
        ASSERT_NE(found, nullptr) << words.toStdString();
        ASSERT_TRUE(found->isEnabled()) << words.toStdString();
        QTest::mouseClick(found, Qt::LeftButton);
    }
    QDialog* dialog() {
        for (auto* each : panel_.findChildren<QDialog*>()) {
            if (each->isVisible()) {
                return each;
            }
        }
        return nullptr;
    }
    std::string message() { return part<QLabel>("message")->text().toStdString(); }
    QListWidget* list() { return part<QListWidget>("keptSetups"); }
    QTableWidget* table() { return part<QTableWidget>("differences"); }
    QToolButton* fold() { return part<QToolButton>("fold"); }
    std::vector<std::string> lines() {
        std::vector<std::string> lines;
        auto* changes = part<QListWidget>("changes");
        for (int row = 0; row < changes->count(); ++row) {
            lines.push_back(changes->item(row)->text().toStdString());
        }
        return lines;
    }
    int rowOf(const QString& name) {
        for (int row = 0; row < table()->rowCount(); ++row) {
            if (table()->verticalHeaderItem(row)->text() == name) {
                return row;
            }
        }
        return -1;
    }
    std::string cell(const QString& name, int column) {
        const int row = rowOf(name);
        return row < 0 ? "no such row" : table()->item(row, column)->text().toStdString();
    }
    template <class Kind>
    const Kind& lastEdit() {
        return *edits_.back().as<Kind>();
    }

    BenchState state_;
    std::optional<Comparison> comparison_;
    std::vector<Car> undo_;
    std::vector<Edit> edits_;
    BaselinePanel panel_;
};

}  // namespace bolthole::test
