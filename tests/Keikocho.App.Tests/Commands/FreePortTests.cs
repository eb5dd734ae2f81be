using System.Net;
using System.Net.Sockets;
using Keikocho.App.Commands;
using Keikocho.App.Hosting;

namespace Keikocho.App.Tests.Commands;

public sealed class FreePortTests
{
    [Fact]
    public void A_usual_port_that_is_taken_gives_a_later_one()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var usual = ((IPEndPoint)taken.LocalEndpoint).Port;
        Assert.InRange(FreePort.Find(IPAddress.Loopback, null, usual), usual + 1, usual + 49);
    }

    [Fact]
    public void Any_port_is_left_to_the_system() => Assert.Equal(0, FreePort.Find(IPAddress.Loopback, 0, 5110));

    [Theory]
    [InlineData(-1)]
    [InlineData(65_536)]
    public void A_number_that_is_no_port_is_wrong_usage(int port) =>
        Assert.Throws<WrongUsageException>(() => FreePort.Find(IPAddress.Loopback, port, 5110));

    [Theory]
    [InlineData("http://localhost:5000")]
    [InlineData("http://127.0.0.1:5000;http://[::1]:5000")]
    [InlineData(null)]
    public void A_setting_that_names_this_machine_only_is_let_pass(string? urls) =>
        Assert.Null(Record.Exception(() => LoopbackAddress.RefuseOthersFromEnvironment(_ => urls)));

    [Theory]
    [InlineData("http://+:5000")]
    [InlineData("http://*:80")]
    [InlineData("http://localhost:5000;http://0.0.0.0:80")]
    [InlineData("http://localhost.elsewhere.example")]
    public void A_setting_that_names_any_other_is_refused(string urls) =>
        Assert.Throws<RefusalException>(() => LoopbackAddress.RefuseOthersFromEnvironment(_ => urls));
}
