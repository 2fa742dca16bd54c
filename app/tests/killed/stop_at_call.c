/* Runs a program and stops it at one of the calls by which it changes files.
 *
 *   stop_at_call HOW N REPORT PROGRAM ARGUMENTS...
 *
 * HOW is "kill": the program is killed before its Nth such call is carried out; or "fail": that
 * call fails, for want of room where it makes or fills a file, else by an error of the device.
 * REPORT is a file in which is written how many such calls there were up to then, and the
 * number of the last. Linux on x86-64 and AArch64; see ptrace(2).
 */
#define _GNU_SOURCE
#include <elf.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ptrace.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <sys/user.h>
#include <sys/wait.h>
#include <unistd.h>

struct call { long number; unsigned long args[6]; };

#if defined(__x86_64__)
static struct user_regs_struct regs_of(pid_t tid) {
    struct user_regs_struct regs;
    if (ptrace(PTRACE_GETREGS, tid, 0, &regs)) { perror("registers"); exit(99); }
    return regs;
}
static struct call call_of(pid_t tid) {
    struct user_regs_struct r = regs_of(tid);
    return (struct call){ (long)r.orig_rax, { r.rdi, r.rsi, r.rdx, r.r10, r.r8, r.r9 } };
}
static void leave_out(pid_t tid) {
    struct user_regs_struct regs = regs_of(tid);
    regs.orig_rax = (unsigned long)-1;
    ptrace(PTRACE_SETREGS, tid, 0, &regs);
}
static void give(pid_t tid, long result) {
    struct user_regs_struct regs = regs_of(tid);
    regs.rax = (unsigned long)result;
    ptrace(PTRACE_SETREGS, tid, 0, &regs);
}
#elif defined(__aarch64__)
static struct user_regs_struct regs_of(pid_t tid) {
    struct user_regs_struct regs;
    struct iovec io = { &regs, sizeof regs };
    if (ptrace(PTRACE_GETREGSET, tid, NT_PRSTATUS, &io)) { perror("registers"); exit(99); }
    return regs;
}
static struct call call_of(pid_t tid) {
    struct user_regs_struct r = regs_of(tid);
    return (struct call){ (long)r.regs[8], { r.regs[0], r.regs[1], r.regs[2], r.regs[3],
                                             r.regs[4], r.regs[5] } };
}
static void leave_out(pid_t tid) {
    int none = -1;
    struct iovec io = { &none, sizeof none };
    ptrace(PTRACE_SETREGSET, tid, NT_ARM_SYSTEM_CALL, &io);
}
static void give(pid_t tid, long result) {
    struct user_regs_struct regs = regs_of(tid);
    regs.regs[0] = (unsigned long)result;
    struct iovec io = { &regs, sizeof regs };
    ptrace(PTRACE_SETREGSET, tid, NT_PRSTATUS, &io);
}
#else
#error "this processor is not known here"
#endif

/* The error that a call which changes files fails with; 0 for any other call. */
static int error_of(struct call call) {
    switch (call.number) {
    case SYS_openat:
        return call.args[2] & O_CREAT ? ENOSPC : 0;
#ifdef SYS_open
    case SYS_open:
        return call.args[1] & O_CREAT ? ENOSPC : 0;
    case SYS_rename:
    case SYS_unlink:
    case SYS_mkdir:
    case SYS_chmod:
    case SYS_link:
    case SYS_symlink:
#endif
    case SYS_fchmod:
    case SYS_fchmodat:
    case SYS_fchown:
    case SYS_fsync:
    case SYS_fdatasync:
    case SYS_renameat:
    case SYS_renameat2:
    case SYS_unlinkat:
    case SYS_linkat:
    case SYS_symlinkat:
    case SYS_mkdirat:
    case SYS_flock:
    case SYS_utimensat:
        return EIO;
    case SYS_write:
    case SYS_pwrite64:
    case SYS_writev:
    case SYS_ftruncate:
    case SYS_fallocate:
    case SYS_copy_file_range:
    case SYS_sendfile:
        return call.args[0] > 2 ? ENOSPC : 0; /* What is said is no file. */
    default:
        return 0;
    }
}

static void report(const char *path, long calls, long last) {
    FILE *file = fopen(path, "w");
    if (!file) { perror(path); exit(99); }
    fprintf(file, "%ld %ld\n", calls, last);
    fclose(file);
}

int main(int argc, char **argv) {
    if (argc < 5) return 99;
    int fails = strcmp(argv[1], "fail") == 0;
    long wanted = atol(argv[2]), calls = 0, last = -1;
    pid_t first = fork();
    if (first == 0) {
        if (ptrace(PTRACE_TRACEME, 0, 0, 0)) { perror("ptrace"); _exit(99); }
        raise(SIGSTOP);
        execvp(argv[4], argv + 4);
        perror(argv[4]);
        _exit(99);
    }
    int status;
    if (waitpid(first, &status, 0) != first || !WIFSTOPPED(status)) return 99;
    long options = PTRACE_O_TRACESYSGOOD | PTRACE_O_TRACECLONE | PTRACE_O_TRACEFORK
                 | PTRACE_O_TRACEVFORK | PTRACE_O_EXITKILL;
    if (ptrace(PTRACE_SETOPTIONS, first, 0, options)) { perror("ptrace"); return 99; }
    ptrace(PTRACE_SYSCALL, first, 0, 0);
    /* Threads that are within a call, and the one whose call is to fail. */
    static uint8_t within[1 << 22];
    pid_t failing = 0;
    int error = 0, killed = 0, ended = 0;
    for (;;) {
        pid_t tid = waitpid(-1, &status, __WALL);
        if (tid < 0) break;
        if (WIFEXITED(status) || WIFSIGNALED(status)) {
            within[tid & ((1 << 22) - 1)] = 0;
            if (tid == first) ended = WIFEXITED(status) ? WEXITSTATUS(status) : 0;
            continue;
        }
        int signal = WSTOPSIG(status);
        if (signal != (SIGTRAP | 0x80)) {
            int own = signal == SIGTRAP || signal == SIGSTOP;
            ptrace(PTRACE_SYSCALL, tid, 0, own ? 0 : signal);
            continue;
        }
        uint8_t *in = &within[tid & ((1 << 22) - 1)];
        *in = !*in;
        if (*in) {
            struct call call = call_of(tid);
            int fails_by = killed ? 0 : error_of(call);
            if (fails_by) {
                calls++;
                last = call.number;
                if (calls == wanted && !fails) {
                    killed = 1;
                    kill(first, SIGKILL);
                    kill(tid, SIGKILL);
                    continue;
                }
                if (calls == wanted) {
                    leave_out(tid);
                    failing = tid;
                    error = fails_by;
                }
            }
        } else if (tid == failing) {
            give(tid, -(long)error);
            failing = 0;
        }
        ptrace(PTRACE_SYSCALL, tid, 0, 0);
    }
    report(argv[3], calls, last);
    return killed ? 0 : ended;
}
