// Work that would keep the window waiting, done on other threads: the latest asked for alone counts.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

namespace bolthole {

/// What work is told while it runs, and how it answers. Copies are of the same job; from any thread.
class Job {
  public:
    /// Whether nobody waits for the job any more: work should end soon.
    [[nodiscard]] bool isCancelled() const;
    /// How far it is, 0 to 1: JobRunner::progressed() on the window's thread.
    void report(double share) const;
    /// Has `take` called on the window's thread, after what was answered before on this thread, unless the
    /// job was cancelled by then.
    void answer(std::function<void()> take) const;

  private:
    friend class JobRunner;
    struct Shared;
    explicit Job(std::shared_ptr<Shared> shared) : shared_(std::move(shared)) {}
    std::shared_ptr<Shared> shared_;
};

/// How a job is to be run.
struct JobPlan {
    /// Threads that do the work at once, as far as the machine has them: each calls it.
    int workers = 1;
    /// A drag is under way: only time that nobody else wants, and one thread less than the machine has.
    bool aside = false;
    /// ms in which nothing else must be asked of the runner before it begins: keys held down change a car
    /// faster than it is computed.
    int delay = 0;
};

/// One job at a time; starting another, or cancel(), drops the one under way: nothing of it arrives any more.
/// All runners share the threads, one a core. Lives on the window's thread.
class JobRunner : public QObject {
    Q_OBJECT
  public:
    using Work = std::function<void(const Job& job)>;

    explicit JobRunner(QObject* parent = nullptr);
    /// Waits for the job's threads, which stop where they ask Job::isCancelled().
    ~JobRunner() override;

    /// Starts `work`, which must hold by value, or keep alive, all it reads.
    void start(Work work, const JobPlan& plan = {});
    void cancel();
    /// Whether a job is waited for.
    [[nodiscard]] bool isRunning() const { return running_ != nullptr; }

  signals:
    void progressed(double share);
    /// All of the job is done and every answer was taken; not of one that was dropped.
    void finished();
    /// The work threw: `reason` in a sentence for the person. Nothing more of the job arrives.
    void failed(const QString& reason);

  private:
    void launch();
    void drop();
    void end(const std::shared_ptr<Job::Shared>& shared, const QString& reason);
    static void work(const std::shared_ptr<Job::Shared>& shared);

    friend class Job;
    std::shared_ptr<Job::Shared> running_;
    std::vector<std::weak_ptr<Job::Shared>> dropped_;  // cancelled, and perhaps still ending
    JobPlan plan_;
    QTimer delay_;
};

/// Where every failure of every job is told, on the window's thread, for whoever shows them to the person.
class JobNews : public QObject {
    Q_OBJECT
  public:
    [[nodiscard]] static JobNews& instance();

  signals:
    void failed(const QString& reason);

  private:
    JobNews() = default;
};

/// How many threads jobs have: one a core.
[[nodiscard]] int jobThreads();
/// How many jobs of all runners are waited for; the window's thread alone.
[[nodiscard]] int jobsUnderWay();

}  // namespace bolthole
