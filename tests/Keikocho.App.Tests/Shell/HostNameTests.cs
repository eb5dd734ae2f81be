using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text;

namespace Keikocho.App.Tests.Shell;

public sealed class HostNameTests
{
    [Theory]
    [InlineData("elsewhere.example", 400)]
    [InlineData("127.0.0.1.elsewhere.example", 400)]
    [InlineData("192.168.1.20", 400)]
    [InlineData("localhost.", 400)]
    [InlineData("localhost", 200)]
    [InlineData("LOCALHOST:5110", 200)]
    [InlineData("[::1]:5110", 200)]
    [InlineData("127.0.0.1", 200)]
    public async Task Only_the_machines_own_names_are_answered(string host, int status)
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/club");
        request.Headers.Host = host;
        using var answer = await browser.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.True(answer.Headers.Contains("Content-Security-Policy"));
        if (status == 400)
            Assert.Equal("text/plain", answer.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task The_port_is_closed_on_every_other_address_of_the_machine()
    {
        await using var app = await RunningApp.StartAsync();
        var others = NetworkInterface.GetAllNetworkInterfaces()
            .SelectMany(card => card.GetIPProperties().UnicastAddresses)
            .Select(one => one.Address)
            .Where(one => one.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(one))
            .ToList();
        // On Linux the whole of 127.0.0.0/8 is this machine, so that there is always one to try.
        if (OperatingSystem.IsLinux())
            others.Add(IPAddress.Parse("127.0.0.2"));
        Assert.SkipWhen(others.Count == 0, "This machine has no other address to try.");
        foreach (var other in others)
        {
            using var client = new TcpClient();
            await Assert.ThrowsAsync<SocketException>(async () => await client.ConnectAsync(other, app.Address.Port, TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public async Task Kana_and_accents_are_sent_as_they_are()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var html = Encoding.UTF8.GetString(await browser.GetByteArrayAsync("/parts", TestContext.Current.CancellationToken));
        Assert.Contains("部品", html, StringComparison.Ordinal);
        Assert.Contains("<title>Parts – ", html, StringComparison.Ordinal);
        Assert.DoesNotContain("&#x90E8;", html, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", html, StringComparison.Ordinal);
        Assert.DoesNotContain("blazor", html, StringComparison.OrdinalIgnoreCase);
    }
}
