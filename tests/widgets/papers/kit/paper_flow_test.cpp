// How blocks flow down a paper's pages.
#include "widgets/papers/kit/paper_flow.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

SheetBlock blockOf(double height, bool keepNext = false) {
    SheetBlock block;
    block.height = height;
    block.keepNext = keepNext;
    return block;
}

TEST(PaperFlow, KeepsOrderAndPages) {
    std::vector<SheetBlock> blocks;
    for (int i = 0; i < 40; ++i) {
        blocks.push_back(blockOf(7 + i % 5, i % 4 == 0));
        blocks.back().above = 2;
    }
    const std::vector<FlowPage> pages = flowed(blocks, {100, 60});
    const SheetBlock* next = blocks.data();
    for (const FlowPage& page : pages) {
        double y = 0;
        for (const PlacedBlock& placed : page) {
            EXPECT_EQ(placed.block, next++);
            EXPECT_GE(placed.box.top(), y);
            y = placed.box.bottom();
        }
        EXPECT_LE(y, 60 + 1e-9);
        EXPECT_EQ(page.front().box.top(), 0);
        EXPECT_FALSE(page.back().block->keepNext) << "a heading alone at the foot";
    }
    EXPECT_EQ(next, blocks.data() + blocks.size());
}

TEST(PaperFlow, RepeatsTheHeadWhereATableRunsOver) {
    const auto head = std::make_shared<SheetBlock>(blockOf(5, true));
    std::vector<SheetBlock> blocks{*head};
    for (int i = 0; i < 12; ++i) {
        blocks.push_back(blockOf(6));
        blocks.back().head = head;
    }
    const std::vector<FlowPage> pages = flowed(blocks, {100, 40});
    ASSERT_EQ(pages.size(), 3U);
    EXPECT_EQ(pages[0].size(), 6U);
    for (std::size_t page = 1; page < 3; ++page) {
        EXPECT_EQ(pages[page].front().block, head.get());
        EXPECT_EQ(pages[page][1].box.top(), 5);
    }
}

TEST(PaperFlow, FillsAPage) {
    std::vector<SheetBlock> blocks{blockOf(20), blockOf(20), blockOf(10)};
    blocks[0].stretch = 10;
    std::vector<FlowPage> pages = flowed(blocks, {100, 100});
    EXPECT_EQ(pages.at(0)[0].box.height(), 30) << "no more than it can use";
    EXPECT_EQ(pages.at(0)[1].box.top(), 30);
    blocks[2].takesRest = true;
    pages = flowed(blocks, {100, 100});
    EXPECT_EQ(pages.at(0)[2].box.bottom(), 100);
    EXPECT_EQ(pages.at(0)[2].box.height(), 50);
}

TEST(PaperFlow, BeginsAPageWhereThatCostsNone) {
    std::vector<SheetBlock> blocks{blockOf(70), blockOf(20), blockOf(60)};
    blocks[1].freshPage = true;
    std::vector<FlowPage> pages = flowed(blocks, {100, 100});
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[1].front().block, &blocks[1]);
    blocks[2].height = 30;
    blocks[0].height = 40;
    pages = flowed(blocks, {100, 100});
    EXPECT_EQ(pages.size(), 1U);
}

TEST(PaperFlow, MakesNoPageOfNothing) {
    EXPECT_TRUE(flowed({}, {100, 100}).empty());
}

}  // namespace
}  // namespace bolthole
