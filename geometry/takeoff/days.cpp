#include "geometry/takeoff/days.hpp"

#include "geometry/takeoff/amount_text.hpp"
#include "geometry/takeoff/footings.hpp"
#include "geometry/takeoff/ledger.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

constexpr int most_days = 3660;
constexpr double done = 1e-9;

/// Days since 1970-01-01 in the calendar of Gregory (Hinnant's algorithm, from memory).
int serial_of(const Date& date) {
    const int y = date.year - (date.month <= 2 ? 1 : 0);
    const int era = (y >= 0 ? y : y - 399) / 400;
    const int year_of_era = y - era * 400;
    const int day_of_year = (153 * (date.month + (date.month > 2 ? -3 : 9)) + 2) / 5 + date.day - 1;
    return era * 146097 + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year -
           719468;
}

Date date_of(int serial) {
    const int shifted = serial + 719468;
    const int era = (shifted >= 0 ? shifted : shifted - 146096) / 146097;
    const int day_of_era = shifted - era * 146097;
    const int year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
    const int day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    const int mp = (5 * day_of_year + 2) / 153;
    const int month = mp + (mp < 10 ? 3 : -9);
    return {year_of_era + era * 400 + (month <= 2 ? 1 : 0), month,
            day_of_year - (153 * mp + 2) / 5 + 1};
}

struct Task {
    Phase phase = Phase::walls;
    std::string what, stage;
    int course = 0;
    double person_days = 0, left = 0;
    struct After {
        std::size_t task;
        double days;
    };
    std::vector<After> after;
    int ended = -1;      // calendar day
    bool closes = false; // rings that are to be closed before the crew stops
};

/// What a task takes: an amount over the rate of one person in a day.
struct Labour {
    double amount;
    std::string name, unit; // of the amount
    double rate;
};

class Planner {
public:
    Planner(const BuildingPlan& plan, const TakeOff& take, const Works& works)
        : plan_(plan), take_(take), works_(works) {}

    DayPlan planned() {
        add_trench();
        add_courses();
        add_openings();
        const std::vector<Task::After> outside = add_coats(WallSide::outside);
        const std::vector<Task::After> inside = add_coats(WallSide::inside);
        add_paint(WallSide::outside, outside);
        add_paint(WallSide::inside, inside);
        add_floor(inside);
        run();
        finish();
        return std::move(days_);
    }

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    const Crew& crew() const { return works_.crew; }

    std::size_t add(Phase phase, const std::string& stage, const std::string& what,
                    const Labour& labour, std::vector<Task::After> after, int course = 0) {
        const double person_days = labour.amount / labour.rate;
        if (person_days > 0)
            count(phase, labour);
        Task task{phase, what, stage, course, person_days, person_days, std::move(after), -1};
        tasks_.push_back(std::move(task));
        return tasks_.size() - 1;
    }

    /// The figures of a stage's work: each amount as a sum, with its rate.
    void count(Phase phase, const Labour& labour) {
        std::vector<Figure>& figures = days_.labour_figures[phase];
        const auto known = std::find_if(figures.begin(), figures.end(), [&](const Figure& figure) {
            return figure.name == labour.name;
        });
        if (known != figures.end()) {
            known->value += labour.amount;
            return;
        }
        figures.push_back({labour.name, labour.amount, labour.unit});
        figures.push_back({"a person-day: " + labour.name, labour.rate, labour.unit});
    }

    void add_trench() {
        if (plan_.schedule.courses.empty())
            return;
        double area = 0;
        for (const Footing& footing : footings(plan_))
            area += footing.trench_area();
        const double gravel = plan_.design.trench.gravel_depth;
        const double placed = area * gravel;
        const double bottom = plan_.schedule.courses.front().bottom;
        const double dug = area * std::max(0.0, plan_.design.ground.level - bottom + gravel);
        last_ = add(Phase::trench, "Trench",
                    placed > 0 ? "Dig the trench, place its gravel" : "Dig the trench",
                    {dug + placed, "dug and placed", "m3", crew().dig_rate}, {});
    }

    void add_courses() {
        std::map<int, double> tamped;
        for (const CourseTake& take : take_.courses)
            tamped[take.course] += take.soil.tamped;
        std::vector<std::size_t> laid; // task of each course
        for (const auto& [course, volume] : tamped) {
            std::vector<Task::After> after;
            if (last_ != none)
                after.push_back({last_, 0});
            const auto lift = static_cast<std::size_t>(crew().lift);
            if (laid.size() >= lift) {
                const std::size_t below = laid[laid.size() - lift];
                const Fill* fill = fill_of(plan_.design, tasks_[below].course);
                after.push_back({below, fill ? fill->age_per_lift.value_or(0) : 0});
            }
            const bool base = is_base_course(
                plan_.design, plan_.schedule.courses[static_cast<std::size_t>(course - 1)]);
            last_ = add(base ? Phase::base : Phase::walls, base ? "Base courses" : "Courses",
                        "Course " + std::to_string(course),
                        {volume, "tamped", "m3", crew().fill_rate}, std::move(after), course);
            laid.push_back(last_);
            task_of_[course] = last_;
            tasks_[last_].closes = leans(course);
            if (tasks_[last_].closes && tasks_[last_].person_days > crew().size)
                long_ = true;
        }
        top_ = last_;
    }

    /// Whether any dome's ring lies over its springline: it is closed before the crew stops.
    bool leans(int course) const {
        const std::vector<DomeForm>& domes = plan_.schedule.building.domes;
        return std::any_of(domes.begin(), domes.end(), [&](const DomeForm& dome) {
            return course <= dome.courses() && dome.course_middle(course) > dome.springline;
        });
    }

    void add_openings() {
        for (const OpeningPlan& opening : plan_.schedule.openings)
            add_fitting("Strike the form of '" + opening.form.id + "'" +
                            (opening.form.use == OpeningUse::niche ? "" : ", fit its frame"),
                        opening.strike_after_course);
        for (const VaultForm& form : plan_.schedule.vault_forms)
            add_fitting("Strike the vault's form of '" + form.tunnel + "'",
                        form.strike_after_course);
        for (const DomeForm& dome : plan_.schedule.building.domes)
            if (dome.cap_courses == 0)
                add_fitting("Fit the skylight of '" + dome.id + "'", dome.courses());
    }

    /// Once the course is as old as forms ask for.
    void add_fitting(const std::string& what, int course) {
        const auto over = task_of_.find(course);
        const std::size_t after = over != task_of_.end() ? over->second : top_;
        std::vector<Task::After> waits;
        if (after != none)
            waits.push_back({after, plan_.design.course.strike_age_days});
        fitted_.push_back(add(Phase::openings, "Doors and windows", what,
                              {1, "fitted", "", crew().fit_rate}, std::move(waits)));
    }

    double area_of(WallSide side) const {
        double area = 0;
        for (const FaceArea& face : take_.faces)
            if ((face.face == FaceKind::outside) == (side == WallSide::outside))
                area += face.area;
        return area;
    }

    /// What a side's paint waits for: its last coat's cure, or without coats what coats wait for.
    std::vector<Task::After> add_coats(WallSide side) {
        std::vector<Task::After> after;
        if (top_ != none)
            after.push_back({top_, 0});
        for (const std::size_t task : fitted_)
            after.push_back({task, 0});
        for (const Coat& coat : coats_of(plan_.design, works_, side)) {
            const std::size_t last =
                add(Phase::plaster, "Plaster " + word(side), "Coat '" + coat.id + "' " + word(side),
                    {area_of(side), "coats", "m2", crew().plaster_rate}, after);
            after = {{last, coat.cure_days}};
        }
        return after;
    }

    void add_paint(WallSide side, std::vector<Task::After> after) {
        for (const Paint& paint : works_.paints)
            if (paint.side == side)
                for (int coat = 1; coat <= paint.coats; ++coat) {
                    const std::size_t last = add(
                        Phase::finish, "Paint " + word(side),
                        "Paint '" + paint.id + "' " + word(side) + ", coat " + std::to_string(coat),
                        {area_of(side), "painted", "m2", crew().paint_rate}, after);
                    after = {{last, paint.dry_days}};
                }
    }

    void add_floor(std::vector<Task::After> after_inside) {
        double volume = 0;
        bool membrane = false;
        for (const TakeOffLine& line : take_.lines) {
            if (line.item == "floor-fill")
                volume += line.amount;
            membrane = membrane || (line.item == "membrane" && line.phase == Phase::finish);
        }
        for (Task::After& after : after_inside)
            after.days = 0; // a floor is laid while the plaster cures
        if (volume > 0)
            add(Phase::finish, "Floor",
                membrane ? "Floor build-up, its membrane laid" : "Floor build-up",
                {volume, "floor", "m3", crew().floor_rate}, std::move(after_inside));
        else if (membrane) // no rate is of it: it takes an hour, not a day
            add(Phase::finish, "Floor", "Lay the floor's membrane",
                {0, "floor", "m3", crew().floor_rate}, std::move(after_inside));
    }

    bool may_start(const Task& task, int day) const {
        for (const Task::After& after : task.after) {
            const int ended = tasks_[after.task].ended;
            if (ended < 0 || day < ended + static_cast<int>(std::ceil(after.days - 1e-9)))
                return false;
        }
        return true;
    }

    bool rests(int day) const {
        if (!crew().start)
            return false;
        const int week_day = (day_of_week(*crew().start) + day) % 7;
        return std::binary_search(crew().rest_days.begin(), crew().rest_days.end(), week_day);
    }

    void run() {
        std::size_t open = tasks_.size();
        for (int day = 0; open > 0; ++day) {
            if (day > most_days) {
                days_.ended = false;
                return;
            }
            if (rests(day))
                continue;
            WorkDay today;
            today.calendar = day;
            double free = crew().size;
            int courses = 0;
            bool waits_for_morning = false;
            for (Task& task : tasks_) {
                if (task.ended >= 0 || !may_start(task, day))
                    continue;
                if (task.course > 0 && courses >= crew().most_courses)
                    continue;
                // Begun in the morning where the rest of this day would leave rings open.
                if (task.closes && task.left == task.person_days && task.left > free + done &&
                    task.person_days <= crew().size) {
                    waits_for_morning = true;
                    continue;
                }
                const double part = std::min(task.left, free);
                if (part <= done && task.left > done)
                    continue;
                task.left -= part;
                free -= part;
                DayWork work{task.phase,  task.what,
                             task.course, task.person_days > 0 ? part / task.person_days : 1,
                             part,        false};
                if (task.left <= done) {
                    task.ended = day;
                    work.ends = true;
                    courses += task.course > 0 ? 1 : 0;
                    --open;
                }
                today.person_days += part;
                bar(task, day, part);
                today.work.push_back(std::move(work));
            }
            if (waits_for_morning && free > done)
                ++short_days_;
            if (!today.work.empty())
                keep(std::move(today));
        }
    }

    void bar(const Task& task, int day, double part) {
        auto found = std::find_if(days_.stages.begin(), days_.stages.end(),
                                  [&](const StageBar& one) { return one.name == task.stage; });
        if (found == days_.stages.end())
            found = days_.stages.insert(days_.stages.end(), StageBar{task.stage, day, day, 0});
        found->to = day;
        found->person_days += part;
    }

    void keep(WorkDay today) {
        today.number = static_cast<int>(days_.days.size()) + 1;
        if (crew().start)
            today.date = days_after(*crew().start, today.calendar);
        for (const DayWork& work : today.work) {
            if (work.course == 0)
                continue;
            for (const CourseTake& take : take_.courses)
                if (take.course == work.course) {
                    today.fill_loose += work.share * take.soil.loose;
                    today.stabiliser_mass += work.share * take.stabiliser_mass;
                    today.water += work.share * take.water;
                    today.tube_cut += work.share * (take.tube_cut + take.lining);
                    today.wire += work.share * take.wire;
                    today.buckets += work.share * take.buckets;
                }
            const Course& course =
                plan_.schedule.courses[static_cast<std::size_t>(work.course - 1)];
            if (begun_ != work.course)
                for (const SetNote& note : course.before)
                    today.set.push_back("Before course " + std::to_string(work.course) + ": " +
                                        note.text);
            begun_ = work.course;
            if (work.ends)
                for (const SetNote& note : course.after)
                    today.set.push_back("After course " + std::to_string(work.course) + ": " +
                                        note.text);
        }
        days_.calendar_days = today.calendar + 1;
        days_.days.push_back(std::move(today));
    }

    void finish() {
        days_.working_days = static_cast<int>(days_.days.size());
        for (const Task& task : tasks_)
            if (task.person_days > 0) {
                days_.person_days += task.person_days;
                days_.labour[task.phase] += task.person_days;
            }
        if (!days_.ended)
            days_.notes.push_back("The work does not end within ten years: the days are those of "
                                  "the first ten, the person-days those of all of it.");
        if (!crew().start && !crew().rest_days.empty())
            days_.notes.push_back("No start is given: rest days are not counted.");
        if (days_.ended)
            days_.notes.push_back(
                "A crew of " + std::to_string(crew().size) + " is on site for " +
                std::to_string(crew().size * days_.working_days) + " person-days, of which " +
                fixed_text(days_.person_days, 1) +
                " are worked: labour counts these alone. Who is paid for waiting costs more.");
        if (short_days_ > 0)
            days_.notes.push_back(
                "On " + std::to_string(short_days_) + (short_days_ == 1 ? " day" : " days") +
                " the crew stops early: the next course over the springline would not be closed "
                "before night. One person more may end the walls sooner.");
        if (long_)
            days_.notes.push_back(
                "Some courses over the springline take longer than a day: stop where a ring is "
                "closed, and not within it.");
        days_.notes.push_back(
            "Rates are of one person in one day: " +
            amount_text(crew().fill_rate, AmountUnit::cubic_metre, plan_.schedule.unit) +
            " of tamped fill, " +
            amount_text(crew().plaster_rate, AmountUnit::square_metre, plan_.schedule.unit) +
            " of a coat. Time your own first course.");
    }

    const BuildingPlan& plan_;
    const TakeOff& take_;
    const Works& works_;
    std::vector<Task> tasks_;
    std::map<int, std::size_t> task_of_; // by course
    std::vector<std::size_t> fitted_;
    std::size_t last_ = none, top_ = none;
    int begun_ = 0;
    int short_days_ = 0; // the crew has time left, but not for the next course
    bool long_ = false;  // a course that leans takes more than a day
    DayPlan days_;
};

} // namespace

int day_of_week(const Date& date) {
    return ((serial_of(date) + 3) % 7 + 7) % 7; // 1970-01-01 was a Thursday
}

Date days_after(const Date& date, int days) {
    return date_of(serial_of(date) + days);
}

std::string date_text(const Date& date) {
    const auto two = [](int value) { return (value < 10 ? "0" : "") + std::to_string(value); };
    return std::to_string(date.year) + "-" + two(date.month) + "-" + two(date.day);
}

DayPlan plan_days(const BuildingPlan& plan, const TakeOff& take, const Works& works) {
    return Planner(plan, take, works).planned();
}

void add_labour(TakeOff& take, const DayPlan& days) {
    if (days.person_days <= 0)
        return;
    for (const auto& [phase, amount] : days.labour)
        take.lines.push_back({"labour", whole_building, phase, "Work of the crew", amount,
                              "Volumes, areas and counts over the rates of the works file.",
                              days.labour_figures.at(phase)});
    std::stable_sort(take.lines.begin(), take.lines.end(),
                     [](const TakeOffLine& a, const TakeOffLine& b) {
                         return a.phase != b.phase ? a.phase < b.phase : a.item < b.item;
                     });
    TakeOffItem item;
    item.code = "labour";
    item.name = "Work of the crew";
    item.unit = AmountUnit::day;
    item.amount = item.to_buy = days.person_days;
    item.how = "Person-days of the day plan; days on which a crew waits are not in it.";
    const auto place = std::find_if(take.items.begin(), take.items.end(),
                                    [](const TakeOffItem& one) { return one.code > "labour"; });
    take.items.insert(place, std::move(item));
}

} // namespace coilwright
