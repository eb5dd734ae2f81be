// The cheapest perfect matching by LEMON 1.3.1 (Debian liblemon-dev 1.3.1+dfsg-6), on the tables that MatchingTables.Children and the
// benchmark make from a seed. Build and run with bench/lemon/run.sh.
//   matching optima          seed, number, edges, sum of all costs, optimum: the kept file of the tests
//   matching time N SEEDS    milliseconds of a solve, graph at hand, and with the graph built: median over the seeds, warm
#include <lemon/matching.h>
#include <lemon/smart_graph.h>
#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

using Graph = lemon::SmartGraph;

static uint64_t next(uint64_t &s) {
    s ^= s >> 12; s ^= s << 25; s ^= s >> 27;
    return s * 2685821657736338717ULL;
}

static const long Absent = -1;

static std::vector<long> children(uint64_t seed, int n) {
    uint64_t s = (seed * 0x9E3779B97F4A7C15ULL) | 1;
    std::vector<long> size(n), age(n), rank(n), cost((size_t)n * n, Absent);
    for (int c = 0; c < n; c++) {
        age[c] = 6 + (long)((next(s) >> 16) % 11);
        size[c] = 160 + (age[c] - 6) * 40 + (long)((next(s) >> 16) % 200);
        rank[c] = (long)((next(s) >> 16) % 6);
    }
    for (int u = 0; u < n; u++)
        for (int v = u + 1; v < n; v++) {
            long c = 2 * labs(size[u] - size[v]) + 40 * labs(age[u] - age[v]) + 25 * labs(rank[u] - rank[v]);
            if ((next(s) >> 16) % 5 == 0) c += 120;
            if ((next(s) >> 16) % 10 != 0) cost[(size_t)u * n + v] = c;
        }
    return cost;
}

// Milliseconds of the solve alone and with the building of the graph; the optimum, -1 for none.
static long solve(const std::vector<long> &cost, int n, double &alone, double &whole) {
    auto a = std::chrono::steady_clock::now();
    Graph g;
    g.reserveNode(n);
    for (int i = 0; i < n; i++) g.addNode();
    Graph::EdgeMap<long> w(g);
    for (int u = 0; u < n; u++)
        for (int v = u + 1; v < n; v++)
            if (cost[(size_t)u * n + v] != Absent) w[g.addEdge(g.nodeFromId(u), g.nodeFromId(v))] = -cost[(size_t)u * n + v];
    auto b = std::chrono::steady_clock::now();
    lemon::MaxWeightedPerfectMatching<Graph, Graph::EdgeMap<long>> m(g, w);
    bool perfect = m.run();
    auto c = std::chrono::steady_clock::now();
    alone = std::chrono::duration<double, std::milli>(c - b).count();
    whole = std::chrono::duration<double, std::milli>(c - a).count();
    return perfect ? -m.matchingWeight() : -1;
}

int main(int argc, char **argv) {
    double alone, whole;
    if (argc == 2 && !strcmp(argv[1], "optima")) {
        for (int n : {10, 12, 20, 30, 40, 60, 80, 100, 140, 200})
            for (uint64_t seed = 1; seed <= 12; seed++) {
                auto cost = children(seed, n);
                long edges = 0, sum = 0;
                for (long c : cost) if (c != Absent) { edges++; sum += c; }
                printf("%llu %d %ld %ld %ld\n", (unsigned long long)seed, n, edges, sum, solve(cost, n, alone, whole));
            }
        return 0;
    }
    if (argc == 4 && !strcmp(argv[1], "time")) {
        int n = atoi(argv[2]), seeds = atoi(argv[3]);
        std::vector<double> solves, wholes;
        long check = 0;
        for (int round = 0; round < 2; round++) {
            solves.clear(); wholes.clear(); check = 0;
            for (int seed = 1; seed <= seeds; seed++) {
                check += solve(children(seed, n), n, alone, whole);
                solves.push_back(alone); wholes.push_back(whole);
            }
        }
        std::sort(solves.begin(), solves.end()); std::sort(wholes.begin(), wholes.end());
        printf("%.4f %.4f %ld\n", solves[solves.size() / 2], wholes[wholes.size() / 2], check);
        return 0;
    }
    fprintf(stderr, "matching optima | matching time N SEEDS\n");
    return 2;
}
