// A page beside the bench, with what a window would do around it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <memory>
#include <vector>

#include "tests/support/typing.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/work_page.h"

namespace bolthole::test {

/// Shows a page of a kind; every edit of it is applied, solved and shown.
template <class Page>
class PageBench : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    PageBench(const Car& car, const QSize& size) : page_(std::make_unique<Page>()) {
        QObject::connect(page_.get(), &WorkPage::edited, page_.get(), [this](const Edit& edit) {
            edits_.push_back(edit);
            const EditResult result = bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            show(result.car);
        });
        show(car);
        page_->resize(size);
        page_->show();
        QApplication::setActiveWindow(page_.get());
    }

    void show(const Car& car) {
        state_.car = car;
        state_.faults = findFaults(car);
        state_.traceIsCurrent = state_.faults.empty();
        if (state_.traceIsCurrent) {
            state_.solvedCar = car;
            computeTrace(car, state_.trace);
        }
        state_.style.units = car.units;
        page_->showState(state_);
    }

    template <class Kind>
    Kind* named(const QString& name) {
        return namedIn<Kind>(*page_, name);
    }
    void type(const QString& name, const QString& text) { typeIn(*page_, name, text); }

    BenchState state_;
    std::unique_ptr<Page> page_;
    std::vector<Edit> edits_;
};

}  // namespace bolthole::test
